"""The families of named checks: one module each, composed by the registry."""
