-- What a season needs to know of a score's movements: a line of JSON each, as `spezzato season --format ndjson` writes them. Of a file that could not be
-- read there is one line, with movement 0 of 0.
CREATE TABLE result (
    content TEXT NOT NULL,
    terms TEXT NOT NULL,
    movement INTEGER NOT NULL,
    movements INTEGER NOT NULL,
    line TEXT NOT NULL,
    PRIMARY KEY (content, terms, movement)
) WITHOUT ROWID;
