"""One address per file."""
