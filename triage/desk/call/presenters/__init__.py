"""From a call to what its page shows and what is read aloud. Every text is finished here."""
