package calc

// ringCheckers compares the rows about wedges, patches and curves.
func ringCheckers() map[string]checker {
	return map[string]checker{}
}
