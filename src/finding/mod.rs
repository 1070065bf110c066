//! What we say about a book: findings, their severity and the source behind them.
