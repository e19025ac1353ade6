"""The person with the oven: every page is a plain GET whose query string is the whole check."""
