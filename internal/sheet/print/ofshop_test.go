package print

import (
	"encoding/csv"
	"encoding/json"
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// ofOneShop is an answer of which a shop has set one figure, and in a list the
// number of one row and the word of another.
func ofOneShop() *sheet.Sheet {
	s := &sheet.Sheet{Command: "web", Title: "12 mm drill", Shop: true}
	s.Open("Web")
	s.Add(sheet.Figure{Key: "web_mm", Label: "web", Value: 2, Kind: quantity.Length, Gauge: quantity.Caliper})
	s.Add(sheet.Figure{Key: "web_taper", Label: "web taper", Value: 0.018, Kind: quantity.Taper, Shop: true})
	s.Grids = []sheet.Grid{{Key: "rows", Columns: []sheet.Column{{Key: "name", Label: "name", Kind: quantity.Word}, {Key: "a_mm", Label: "a", Kind: quantity.Length, Gauge: quantity.Caliper}},
		Rows: [][]sheet.Cell{{sheet.W("one"), {Value: 2.5, Shop: true}}, {{Word: "two", Value: math.NaN(), Shop: true}, sheet.V(3)}, {sheet.W("three"), sheet.V(4)}}}}
	return s
}

var blanks = regexp.MustCompile(" +")

// What a shop has set is told from the rest in every form.
func TestWhatAShopHasSetIsMarked(t *testing.T) {
	for name, c := range map[string]struct {
		form  Form
		width int
		wants []string
	}{
		"table":  {Table, 80, []string{"web taper 0.0180 mm/mm shop\n", "web 2.00 mm\n", "one 2.50*\n", "two* 3.00\n", "three 4.00\n", "* as the shop has set it\n"}},
		"narrow": {Table, 60, []string{" web taper: 0.0180 mm/mm (shop)\n", " web: 2.00 mm\n"}},
		"plain":  {Plain, 80, []string{"web\t2.00\tmm\t\t\t\t\t\n", "web taper\t0.0180\tmm/mm\t\t\t\tshop\t\n", "name\ta mm\tset by shop\none\t2.50\ta_mm\ntwo\t3.00\tname\nthree\t4.00\t\n"}},
		"csv":    {CSV, 80, []string{"drill,web_mm,web_taper,set_by_shop,findings\n12 mm drill,2,0.018,web_taper,\n"}},
	} {
		out := blanks.ReplaceAllString(written(t, Options{Form: c.form, Width: c.width}, ofOneShop()), " ")
		for _, want := range c.wants {
			if !strings.Contains(out, want) {
				t.Errorf("%s: no %q in\n%s", name, want, out)
			}
		}
	}
	s := ofOneShop()
	s.Grids[0].Main = true
	rows, err := csv.NewReader(strings.NewReader(written(t, Options{Form: CSV}, s))).ReadAll()
	if err != nil || !slices.Equal(rows[0], []string{"name", "a_mm", "set_by_shop"}) || rows[1][2] != "a_mm" || rows[2][2] != "name" || rows[3][2] != "" {
		t.Errorf("%v, %v", rows, err)
	}
	var got struct {
		Set     []string `json:"set_by_shop"`
		Results struct {
			Rows []struct {
				Set []string `json:"set_by_shop"`
			}
		}
	}
	if err := json.Unmarshal([]byte(written(t, Options{Form: JSON}, ofOneShop())), &got); err != nil {
		t.Fatal(err)
	}
	if r := got.Results.Rows; !slices.Equal(got.Set, []string{"web_taper"}) || !slices.Equal(r[0].Set, []string{"a_mm"}) || !slices.Equal(r[1].Set, []string{"name"}) || r[2].Set != nil {
		t.Errorf("%+v", got)
	}
}

// Where no shop is in force nothing speaks of one.
func TestNoShopNoMark(t *testing.T) {
	s := ofOneShop()
	s.Shop, s.Sections[0].Figures[1].Shop, s.Grids[0].Rows = false, false, nil
	for _, form := range []Form{Table, Plain, CSV, JSON} {
		if out := written(t, Options{Form: form}, s); strings.Contains(out, "shop") || strings.Contains(out, "*") {
			t.Errorf("%s:\n%s", form, out)
		}
	}
}
