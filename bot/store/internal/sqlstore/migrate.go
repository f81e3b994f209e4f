package sqlstore

import (
	"context"
	"database/sql"
	"fmt"
	"io/fs"

	"github.com/pressly/goose/v3"
)

// SchemaError says that the records were last written by a newer program. They
// are left as they are: this program would not know what it spoils.
type SchemaError struct {
	Found, Known int64 // versions of the schema
}

func (e *SchemaError) Error() string {
	return fmt.Sprintf("the records are in form %d, and this program knows forms up to %d: they belong to a newer counterhand; use that one", e.Found, e.Known)
}

// Migrate brings the schema up to the newest of the files in the folder
// "migrations", and returns a
// *[SchemaError] where it is newer than that. Migrations only go forward. The
// options must bring a lock, unless the caller holds one.
func Migrate(ctx context.Context, db *sql.DB, dialect goose.Dialect, migrations fs.FS, options ...goose.ProviderOption) error {
	files, err := fs.Sub(migrations, "migrations")
	if err != nil {
		return err
	}
	options = append(options, goose.WithDisableGlobalRegistry(true))
	p, err := goose.NewProvider(dialect, db, files, options...)
	if err != nil {
		return fmt.Errorf("read migrations: %w", err)
	}
	found, known, err := p.GetVersions(ctx)
	if err != nil {
		return fmt.Errorf("read the version of the schema: %w", err)
	}
	if found > known {
		return &SchemaError{Found: found, Known: known}
	}
	if found == known {
		return nil
	}
	if _, err := p.Up(ctx); err != nil {
		return fmt.Errorf("migrate: %w", err)
	}
	return nil
}
