"""What we say: joins facts, question and mathematics, one file a question."""
