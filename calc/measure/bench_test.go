package measure

import "testing"

func BenchmarkScanQuantity(b *testing.B) {
	for _, in := range []string{
		"strips", "template", "60 x 72", "2½ in strips", "2 1/2 in strips", "22.5°",
		"a hundred and twenty and a half inches", "three quarters of a yard", "a yard and a half", "3ft 2in wide",
	} {
		b.Run(in, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				ScanQuantity(in)
			}
		})
	}
}

func BenchmarkShow(b *testing.B) {
	l := 13*Inch + 13*Inch/16
	for name, show := range map[string]func() string{
		"ruler":  func() string { return l.Show(Imperial) },
		"metric": func() string { return l.Show(Metric) },
		"cloth":  func() string { return Cloth(Yard * 5 / 8).Show(Imperial) },
		"size":   func() string { return Size{l, l}.Show(Imperial) },
		"angle":  func() string { return Angle(22.5).Show() },
	} {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				_ = show()
			}
		})
	}
}

func BenchmarkParseLength(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		_, _ = ParseLength("13 13/16 in", InchUnit)
	}
}

// TestScanQuantityAllocatesNothing holds what its doc comment promises.
func TestScanQuantityAllocatesNothing(t *testing.T) {
	for _, row := range scanRows {
		read, rest := cutBar(row.in)
		in := read + rest
		if n := testing.AllocsPerRun(10, func() { ScanQuantity(in) }); n != 0 {
			t.Errorf("ScanQuantity(%q) allocates %v times", in, n)
		}
	}
}
