-- The last reading of a moisture meter: tenths of a per cent of the ovendry mass, and its day (YYYY-MM-DD).
ALTER TABLE boards ADD COLUMN moisture_tenths INTEGER CHECK (moisture_tenths BETWEEN 1 AND 3000);
ALTER TABLE boards ADD COLUMN moisture_on TEXT CHECK ((moisture_on IS NULL) = (moisture_tenths IS NULL) AND (moisture_on IS NULL OR date(moisture_on) = moisture_on));

PRAGMA user_version = 13;
