//! Book and today to an assessment: findings, dates, money. Pure.
