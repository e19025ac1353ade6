"""The call page, the words it matches, and the QR code for the caller's telephone."""
