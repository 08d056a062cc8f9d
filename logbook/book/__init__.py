"""The logbook file: opening, connection, schema, records, search, changes, backups."""
