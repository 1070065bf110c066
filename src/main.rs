//! Hands the arguments to the command line and turns its answer into an exit code.

fn main() {}
