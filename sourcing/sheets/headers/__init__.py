"""close_words column_names column_questions value_looks What the headers of a table mean, in five languages."""
