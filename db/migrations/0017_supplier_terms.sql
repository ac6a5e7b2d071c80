-- What a supplier asks beyond its prices (delivery, minimum order) as JSON in the shape of the wire; null for nothing.
ALTER TABLE price_lists ADD COLUMN terms TEXT CHECK (json_valid(terms));

PRAGMA user_version = 17;
