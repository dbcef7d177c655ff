"""Runs the steps on the connection that is already open, inside its transaction."""

from alembic import context

connection = context.config.attributes["connection"]
context.configure(connection=connection, target_metadata=None, render_as_batch=True, transactional_ddl=True)
with context.begin_transaction():
    context.run_migrations()
