"""Pictures of readings, drawn on the server as plain shapes, each with a text that says the same."""
