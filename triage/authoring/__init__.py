"""The knowledge author's tools: what the pack knows, where it is weak, what a change does. No Django."""
