"""From the pages' own view models to plain values for JSON."""
