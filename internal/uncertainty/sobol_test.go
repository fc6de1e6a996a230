package uncertainty

import (
	"fmt"
	"hash/crc32"
	"strings"
	"testing"

	"evenlip/internal/testkit"
)

var (
	scipy = testkit.Source{Work: "SciPy 1.10, documentation of stats.qmc.Sobol", Sure: testkit.Print}
	joe   = testkit.Source{Work: "Joe and Kuo (2008)", Sure: testkit.Recalled + ", high"}
	fox   = testkit.Source{Work: "Bratley and Fox (1988)", Sure: testkit.Recalled + ", high"}
)

// The first points in print lie half a cell of ours nearer to zero.
func TestPublishedPoints(t *testing.T) {
	const half = 0.5 / N
	for i, printed := range [][3]float64{
		{0, 0, 0}, {0.5, 0.5, 0.5}, {0.75, 0.25, 0.25}, {0.25, 0.75, 0.75},
		{0.375, 0.375, 0.625}, {0.875, 0.875, 0.125}, {0.625, 0.125, 0.875}, {0.125, 0.625, 0.375},
	} {
		for d, at := range Point(i, 3) {
			source := scipy
			if d == 2 {
				source = joe
			}
			from := testkit.Against(t, source, "the first points")
			from.Within(fmt.Sprintf("point %d, dimension %d", i+1, d+1), at-half, printed[d], 0, "")
		}
	}
}

// The example from which the direction numbers of a dimension are usually explained.
func TestDirectionNumbers(t *testing.T) {
	cubic := dimension{a: 1, m: []uint16{1, 3, 7}} // x^3 + x + 1
	got := cubic.directions(6)
	from := testkit.Against(t, fox, "direction numbers of x^3 + x + 1, begun with 1, 3, 7")
	for i, printed := range []float64{5, 7, 43} {
		from.Within(fmt.Sprint("m", 4+i), float64(got[3+i]), printed, 0, "")
	}
}

// The rows by a checksum of the file's lines, worked out apart from SciPy's copy of it.
func TestTableIsThePublishedOne(t *testing.T) {
	sum := crc32.NewIEEE()
	for _, row := range dimensions[1:] {
		fmt.Fprintln(sum, row.d, len(row.m), row.a, strings.Trim(fmt.Sprint(row.m), "[]"))
	}
	if got := sum.Sum32(); got != 0x141cd7cd {
		t.Errorf("checksum %#x", got)
	}
}

// What the table must be, whatever its numbers: a row is a primitive polynomial with odd
// direction numbers that are small enough, and no polynomial comes twice.
func TestTable(t *testing.T) {
	seen := map[uint64]bool{}
	for _, row := range dimensions[1:] {
		degree := len(row.m)
		polynomial := 1<<degree | uint64(row.a)<<1 | 1
		if seen[polynomial] {
			t.Errorf("dimension %d: its polynomial comes twice", row.d)
		}
		seen[polynomial] = true
		// Primitive: the powers of x, taken by it, return to 1 after all others.
		power, x := 1, uint64(2)
		for ; x != 1 && power < 1<<degree; power++ {
			if x <<= 1; x>>degree == 1 {
				x ^= polynomial
			}
		}
		if degree > 1 && power != 1<<degree-1 {
			t.Errorf("dimension %d: its polynomial is not primitive", row.d)
		}
		for k, m := range row.m {
			if m%2 == 0 || m >= 2<<k {
				t.Errorf("dimension %d: direction number %d is %d", row.d, k+1, m)
			}
		}
	}
}

// Property A, which the table has in all its dimensions: of the first 2^n points of n
// dimensions one lies in each of the parts that halving every side makes. That is,
// the leading digits of the first n direction numbers are independent. Ours are the
// table's own as far as none is left out.
func TestPropertyA(t *testing.T) {
	n := 0
	for n < Dims && int(dimensions[n].d) == n+1 {
		n++
	}
	rows := make([]uint64, n)
	for d := range rows {
		for k, m := range dimensions[d].directions(n) {
			rows[d] |= m >> k & 1 << k
		}
	}
	if n < 31 || rank(rows) != n {
		t.Errorf("of the first %d dimensions the leading digits have rank %d", n, rank(rows))
	}
}

// rank is that of a matrix of binary digits.
func rank(rows []uint64) int {
	n := 0
	for i, row := range rows {
		if row == 0 {
			continue
		}
		n++
		lowest := row & -row
		for j := i + 1; j < len(rows); j++ {
			if rows[j]&lowest != 0 {
				rows[j] ^= row
			}
		}
	}
	return n
}

// In every dimension the first 2^k points fill the 2^k parts of a side, one each.
func TestEachPartOnce(t *testing.T) {
	for d := range Dims {
		for k := range digits + 1 {
			met := map[int]bool{}
			for i := range 1 << k {
				met[int(Point(i, Dims)[d]*float64(int(1)<<k))] = true
			}
			if len(met) != 1<<k {
				t.Errorf("dimension %d: %d points fill %d parts", d, 1<<k, len(met))
			}
		}
	}
}

// What the dimensions were chosen for: no two of them leave a box from the origin with
// a part of the points that differs from its area by more than 0.04.
func TestPairs(t *testing.T) {
	for a := range Dims {
		for b := range a {
			if worst := discrepancy(a, b); worst > 0.04 {
				t.Errorf("dimensions %d and %d: star discrepancy %.3f", dimensions[b].d, dimensions[a].d, worst)
			}
		}
	}
}

// discrepancy is the star discrepancy of the points in two dimensions.
func discrepancy(a, b int) float64 {
	var other [N]int // at each place along the first
	for _, p := range points() {
		other[int(p[a]*N)] = int(p[b] * N)
	}
	worst := 0
	var below [N + 1]int // points so far, below each place along the second
	for x, y := range other {
		for j := range N { // areas in quarters of a cell
			worst = max(worst, (2*x+1)*(2*j+1)-4*N*below[j])
		}
		for j := y + 1; j <= N; j++ {
			below[j]++
		}
		for j := range N {
			worst = max(worst, 4*N*below[j+1]-(2*x+1)*(2*j+1))
		}
	}
	return float64(worst) / (4 * N * N)
}
