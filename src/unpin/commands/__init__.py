"""The commands, one module each with a `run(chosen)` that gives the exit status; what several of them need stands in
`stop`, `problem` and `writing`. Each is imported when it runs."""
