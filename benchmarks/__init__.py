"""Speed as a measured claim: `make bench`."""
