"""The knowledge author's bench: what the pack knows, where it is weak, what a change does. No Django."""
