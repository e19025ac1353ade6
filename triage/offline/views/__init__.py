"""What the installed app fetches, one per file."""
