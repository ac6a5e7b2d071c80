-- Which of all that its design leaves open a plan was made with; null where that is nothing, and for runs from before.
ALTER TABLE plan_runs ADD COLUMN made_with TEXT CHECK (json_valid(made_with));

PRAGMA user_version = 16;
