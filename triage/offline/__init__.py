"""The installed app: the compiled pack, and what a phone needs to go through a check with no signal."""
