//! A draft on a loopback address that follows the folder.
