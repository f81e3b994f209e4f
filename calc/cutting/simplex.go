package cutting

import (
	"math"
	"slices"
)

// simplex minimises cost·x with A·x = b and x ≥ 0 by the revised simplex
// method, and goes on from where it was when columns are added. The right-hand
// side is not negative. Every row starts with an artificial column of a cost so
// high that it stays only where there is no solution.
type simplex struct {
	rows    int
	columns [][]float64 // none for the artificial ones, which never come back
	costs   []float64
	basis   []int       // column of each row
	value   []float64   // of the basic columns
	inverse [][]float64 // of the basis
	steps   int64       // elementary steps taken so far
	arena   []float64   // that columns are cut from
}

// artificialCost makes artificial columns dearer than any strip.
const artificialCost = 1e3

// tolerance is what counts as nothing, in units of a strip's height.
const tolerance = 1e-7

func newSimplex(b []float64, scale float64) *simplex {
	rows := len(b)
	s := &simplex{rows: rows, value: slices.Clone(b)}
	cells := make([]float64, rows*rows)
	for r := range rows {
		row := cells[r*rows : (r+1)*rows : (r+1)*rows]
		row[r] = 1
		s.inverse = append(s.inverse, row)
		s.basis = append(s.basis, s.add(nil, artificialCost*scale))
	}
	return s
}

// column gives an empty column to fill and add.
func (s *simplex) column() []float64 {
	if len(s.arena) < s.rows {
		s.arena = make([]float64, 64*s.rows)
	}
	column := s.arena[:s.rows:s.rows]
	s.arena = s.arena[s.rows:]
	return column
}

// add adds a column and gives its number.
func (s *simplex) add(column []float64, cost float64) int {
	s.columns = append(s.columns, column)
	s.costs = append(s.costs, cost)
	return len(s.columns) - 1
}

// minimise goes to the least cost over the columns there are. It gives false
// where it came to a standstill before.
func (s *simplex) minimise() bool {
	prices := make([]float64, s.rows)
	direction := make([]float64, s.rows)
	for round := 0; round < 100*s.rows; round++ {
		s.duals(prices)
		enter := s.entering(prices, round > 20*s.rows)
		if enter < 0 {
			return true
		}
		for r, row := range s.inverse {
			direction[r] = dot(row, s.columns[enter])
		}
		leave := s.leaving(direction)
		if leave < 0 {
			return false
		}
		s.pivot(enter, leave, direction)
		s.steps += int64(s.rows * (len(s.columns) + 3*s.rows))
	}
	return false
}

// duals gives the price of each row.
func (s *simplex) duals(prices []float64) {
	clear(prices)
	for r, c := range s.basis {
		if cost := s.costs[c]; cost != 0 {
			for j, v := range s.inverse[r] {
				prices[j] += cost * v
			}
		}
	}
}

// entering is the column that cheapens most, or, to end a standstill, the first
// that cheapens at all; -1 where none does.
func (s *simplex) entering(prices []float64, first bool) int {
	best, at := -tolerance, -1
	for c := s.rows; c < len(s.columns); c++ {
		if d := s.costs[c] - dot(prices, s.columns[c]); d < best {
			best, at = d, c
			if first {
				break
			}
		}
	}
	return at
}

// leaving is the row whose basic column is used up first; of equal ones that
// with the first column.
func (s *simplex) leaving(direction []float64) int {
	at, least := -1, math.Inf(1)
	for r, d := range direction {
		if d <= 1e-9 {
			continue
		}
		ratio := s.value[r] / d
		if ratio < least-1e-12 || ratio < least+1e-12 && s.basis[r] < s.basis[at] {
			at, least = r, ratio
		}
	}
	return at
}

// pivot takes a column into the basis in a row's place.
func (s *simplex) pivot(enter, leave int, direction []float64) {
	row := s.inverse[leave]
	d := direction[leave]
	for j := range row {
		row[j] /= d
	}
	s.value[leave] = max(0, s.value[leave]/d)
	for r, f := range direction {
		if r == leave || f == 0 {
			continue
		}
		for j, v := range row {
			s.inverse[r][j] -= f * v
		}
		s.value[r] = max(0, s.value[r]-f*s.value[leave])
	}
	s.basis[leave] = enter
}

// cost is the sum over the basis.
func (s *simplex) cost() float64 {
	sum := 0.0
	for r, c := range s.basis {
		sum += s.costs[c] * s.value[r]
	}
	return sum
}

// feasible tells whether no artificial column is left.
func (s *simplex) feasible() bool {
	for r, c := range s.basis {
		if c < s.rows && s.value[r] > 1e-6 {
			return false
		}
	}
	return true
}

func dot(a, b []float64) float64 {
	sum := 0.0
	for i, v := range a {
		sum += v * b[i]
	}
	return sum
}
