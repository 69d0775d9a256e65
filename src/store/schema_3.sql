-- Conditions on passages are answered from this index alone, without looking at the passages themselves.
DROP INDEX IF EXISTS passage_kind;
CREATE INDEX passage_kind ON passage (kind, first_side, second_side, strength, steps, semitones, movement);
