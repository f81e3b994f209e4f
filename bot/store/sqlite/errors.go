package sqlite

import (
	"errors"
	"fmt"

	"modernc.org/sqlite"
	sqlite3 "modernc.org/sqlite/lib"
)

// FileError says what is wrong with a file.
type FileError struct {
	Path    string
	Problem string // completes "file: "
	Err     error  // what the system or SQLite said
}

func (e *FileError) Error() string { return fmt.Sprintf("%s: %s (%v)", e.Path, e.Problem, e.Err) }

func (e *FileError) Unwrap() error { return e.Err }

// damageError is what SQLite found when it checked the file.
type damageError struct{ verdict string }

func (e *damageError) Error() string { return e.verdict }

// problems names what an operator can do something about, by SQLite's primary
// result codes (https://www.sqlite.org/rescode.html).
var problems = map[int]string{
	sqlite3.SQLITE_READONLY: "it cannot be written: give this user the right to write the file and its folder",
	sqlite3.SQLITE_CANTOPEN: "it cannot be opened: give this user the right to read and write the file and its folder",
	sqlite3.SQLITE_PERM:     "it cannot be opened: give this user the right to read and write the file and its folder",
	sqlite3.SQLITE_FULL:     "the disk is full: nothing more can be saved until there is room",
	sqlite3.SQLITE_IOERR:    "the disk failed to read or write it",
	sqlite3.SQLITE_BUSY:     "another program keeps it locked",
	sqlite3.SQLITE_CORRUPT:  "it is damaged",
	sqlite3.SQLITE_NOTADB:   "it is damaged, or was never a file of records",
}

// explain says what is wrong with the file where SQLite's error has a known cause.
func explain(path string, err error) error {
	var known *FileError
	if errors.As(err, &known) {
		return err
	}
	var damage *damageError
	if errors.As(err, &damage) {
		return &FileError{Path: path, Problem: problems[sqlite3.SQLITE_CORRUPT], Err: err}
	}
	if problem, ok := problems[code(err)]; ok {
		return &FileError{Path: path, Problem: problem, Err: err}
	}
	return err
}

// isDamage reports whether the file's content is at fault.
func isDamage(err error) bool {
	var damage *damageError
	c := code(err)
	return errors.As(err, &damage) || c == sqlite3.SQLITE_CORRUPT || c == sqlite3.SQLITE_NOTADB
}

// code returns SQLite's primary result code, and its code for success where the
// error is none of SQLite's.
func code(err error) int {
	var fault *sqlite.Error
	if !errors.As(err, &fault) {
		return sqlite3.SQLITE_OK
	}
	return fault.Code() & 0xff
}
