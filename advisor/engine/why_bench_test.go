package engine_test

import "testing"

// BenchmarkWhy tries every single answer on the head of the demo car.
func BenchmarkWhy(b *testing.B) {
	e := builtin(b, nil)
	c := onDisk(b, e, "demo.toml")
	for b.Loop() {
		e.Why(c, "head_off")
	}
}
