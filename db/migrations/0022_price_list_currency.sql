-- The currency of a list's prices, which was the shop's when it was stored; null for lists from before this was kept.
ALTER TABLE price_lists ADD COLUMN currency TEXT CHECK (length(currency) = 3);

PRAGMA user_version = 22;
