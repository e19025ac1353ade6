"""From an engine's step to what one page shows. Every text is finished here and every address complete."""
