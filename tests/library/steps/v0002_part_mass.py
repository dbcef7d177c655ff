"""Parts get a mass: the table is built anew and the rows are moved over."""

from alembic import op

revision = "0002"
down_revision = "0001"


def upgrade() -> None:
    op.execute(
        "CREATE TABLE part_new (id TEXT NOT NULL, bike_id TEXT NOT NULL, place TEXT NOT NULL, mass_g REAL NOT NULL, "
        "position INTEGER NOT NULL, photo BLOB, version INTEGER NOT NULL, CONSTRAINT pk_part PRIMARY KEY (id), "
        "CONSTRAINT ck_part_place CHECK (place IN ('front', 'rear', 'post')), "
        "CONSTRAINT uq_part_bike_id_place UNIQUE (bike_id, place), "
        "CONSTRAINT fk_part_bike_id FOREIGN KEY(bike_id) REFERENCES bike (id) DEFERRABLE INITIALLY DEFERRED) STRICT"
    )
    op.execute(
        "INSERT INTO part_new (id, bike_id, place, mass_g, position, photo, version) "
        "SELECT id, bike_id, place, 0.0, position, photo, version FROM part"
    )
    op.execute("DROP TABLE part")
    op.execute("ALTER TABLE part_new RENAME TO part")
    op.execute("CREATE INDEX ix_part_bike_id ON part (bike_id)")
