package postgres

import (
	"context"
	"database/sql"
	"database/sql/driver"
	"errors"
	"fmt"
	"io"
	"net"
	"strings"

	"github.com/jackc/pgx/v5/pgconn"

	"counterhand/bot/store/internal/sqlstore"
)

// ServerError says what is wrong with the server or the database.
type ServerError struct {
	Problem string
	Err     error // what the driver or the server said
}

func (e *ServerError) Error() string { return fmt.Sprintf("database: %s (%v)", e.Problem, e.Err) }

func (e *ServerError) Unwrap() error { return e.Err }

// Error codes of the server, and the first two letters of a class of them
// (https://www.postgresql.org/docs/current/errcodes-appendix.html).
const (
	serializationFailure = "40001"
	deadlockDetected     = "40P01"
	readOnlyTransaction  = "25006"
	missingDatabase      = "3D000"
	missingRight         = "42501"
	diskFull             = "53100"
	loginRefused         = "28"
	resourcesUsedUp      = "53"
	operatorIntervened   = "57" // shutting down, starting up, query cancelled
	connectionFailed     = "08"
)

// problems names what an operator can do something about; the longest prefix of
// the code counts.
var problems = []struct{ prefix, problem string }{
	{diskFull, "the server's disk is full: nothing more can be saved until there is room"},
	{readOnlyTransaction, "it takes no changes: this is a copy that can only be read, or it was set so"},
	{missingDatabase, "there is none of that name: make it first"},
	{missingRight, "the user lacks a right: let the user own the database"},
	{loginRefused, "the server refuses the login: look at the user and the password"},
	{resourcesUsedUp, "the server has nothing left to give: too many connections, or no memory"},
	{operatorIntervened, "the server is starting, stopping or was told to stop this"},
	{connectionFailed, "the connection failed"},
}

func explain(err error) error {
	code := codeOf(err)
	for _, p := range problems {
		if code != "" && strings.HasPrefix(code, p.prefix) {
			return &ServerError{Problem: p.problem, Err: err}
		}
	}
	if isBroken(err) {
		return &ServerError{Problem: "the server cannot be reached", Err: err}
	}
	return err
}

// codeOf returns the server's error code, and nothing where the error is none
// of the server's.
func codeOf(err error) string {
	var fault *pgconn.PgError
	if !errors.As(err, &fault) {
		return ""
	}
	return fault.Code
}

// isUncommitted reports whether a transaction surely left no trace and may
// succeed at once.
func isUncommitted(err error) bool {
	switch codeOf(err) {
	case serializationFailure, deadlockDetected:
		return true
	}
	return pgconn.SafeToRetry(err)
}

// isBroken reports whether the connection failed, so that nobody knows what
// became of the statement.
func isBroken(err error) bool {
	switch code := codeOf(err); {
	case err == nil, errors.Is(err, context.Canceled), errors.Is(err, context.DeadlineExceeded), errors.Is(err, sql.ErrNoRows):
		return false
	case code != "":
		return strings.HasPrefix(code, connectionFailed) || strings.HasPrefix(code, operatorIntervened)
	}
	return isOfTheWire(err)
}

// isOfTheWire reports whether the error came from the network or the driver's
// end of it.
func isOfTheWire(err error) bool {
	var (
		network net.Error
		connect *pgconn.ConnectError
	)
	if errors.As(err, &network) || errors.As(err, &connect) {
		return true
	}
	for _, broken := range []error{io.EOF, io.ErrUnexpectedEOF, net.ErrClosed, driver.ErrBadConn, sql.ErrConnDone, pgconn.ErrConnClosed} {
		if errors.Is(err, broken) {
			return true
		}
	}
	return false
}

// isAway reports whether a fault at the start may mend by itself.
func isAway(err error) bool {
	code := codeOf(err)
	for _, lasting := range []string{loginRefused, missingDatabase, missingRight, readOnlyTransaction} {
		if strings.HasPrefix(code, lasting) {
			return false
		}
	}
	var schema *sqlstore.SchemaError
	return !errors.As(err, &schema)
}
