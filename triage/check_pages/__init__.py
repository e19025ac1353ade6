"""A check as pages show it, whoever reads them: the address, the visit, and finished texts for every step."""
