"""Reports: plain text for the terminal, the JSON record, and worked calculations."""
