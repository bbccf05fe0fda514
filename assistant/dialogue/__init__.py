"""One turn of a job: events in, answer out."""
