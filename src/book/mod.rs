//! The book as typed values: plain data, no I/O, no judgement.
