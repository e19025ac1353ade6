"""The agent with a headset: every page is a plain GET; the trail and the call are in the address."""
