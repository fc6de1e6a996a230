package main

import (
	"bytes"
	"fmt"
	"html"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"unicode/utf8"

	"evenlip/internal/cli"
)

// shown are the screens that the documents show, by the picture's name.
var shown = map[string][]string{
	"inspect":    {"inspect", "--sample"},
	"regrind":    {"regrind", "--sample"},
	"crib-audit": {"crib", "audit", "--sample"},
}

// A cell of the picture in pixels, and the room around them.
const cellWidth, cellHeight, fontSize, margin = 8.4, 18, 14, 16

// theme is a terminal's colours.
type theme struct{ ground, letters, red, yellow, green string }

var themes = map[string]theme{
	"dark":  {"#1e1e1e", "#d4d4d4", "#f47067", "#d9a300", "#57ab5a"},
	"light": {"#ffffff", "#24292f", "#c1121f", "#8a6100", "#116329"},
}

// pictures draws the screens into a folder, dark and light, as they are where no shop
// has set anything.
func pictures(dir string) error {
	os.Setenv("LC_ALL", "C.UTF-8")
	os.Setenv("EVENLIP_SHOP", "none")
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return err
	}
	for name, args := range shown {
		var out, complaint bytes.Buffer
		styled := append(args[:len(args):len(args)], "--color", "always", "--width", "80")
		if status := cli.Main(styled, strings.NewReader(""), &out, &complaint); status != 0 {
			return fmt.Errorf("%s: status %d: %s", name, status, &complaint)
		}
		for ground, colours := range themes {
			text := picture("$ evenlip "+strings.Join(args, " ")+"\n"+out.String(), colours)
			if err := os.WriteFile(filepath.Join(dir, name+"-"+ground+".svg"), []byte(text), 0o644); err != nil {
				return err
			}
		}
	}
	return nil
}

// picture draws what a terminal of 80 columns shows of a text with styles, as SVG.
func picture(text string, t theme) string {
	lines := strings.Split(strings.TrimSuffix(text, "\n"), "\n")
	columns := 80
	for _, l := range lines {
		columns = max(columns, width(l))
	}
	var b strings.Builder
	w, h := 2*margin+float64(columns)*cellWidth, 2*margin+len(lines)*cellHeight
	fmt.Fprintf(&b, `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %.0f %d" width="%.0f" height="%d" font-family="DejaVu Sans Mono, Menlo, Consolas, monospace" font-size="%d">`+"\n", w, h, w, h, fontSize)
	fmt.Fprintf(&b, `<rect width="100%%" height="100%%" rx="6" fill="%s"/>`+"\n", t.ground)
	for row, line := range lines {
		column := 0
		eachStyle(line, func(text string, codes []int) {
			n := utf8.RuneCountInString(text)
			if strings.TrimSpace(text) != "" {
				span(&b, text, margin+float64(column)*cellWidth, margin+row*cellHeight, n, t, codes)
			}
			column += n
		})
	}
	return b.String() + "</svg>\n"
}

// span draws a run of letters of one style at its cell.
func span(b *strings.Builder, text string, x float64, y, cells int, t theme, codes []int) {
	fill, more := t.letters, ""
	for _, code := range codes {
		switch code {
		case 1:
			more += ` font-weight="bold"`
		case 2:
			more += ` opacity="0.6"`
		case 31:
			fill = t.red
		case 32:
			fill = t.green
		case 33:
			fill = t.yellow
		case 30:
			fill = "#000000"
		case 97:
			fill = "#ffffff"
		case 41, 42, 43:
			ground := [...]string{"#c1121f", "#57ab5a", "#e3b341"}[code-41]
			fmt.Fprintf(b, `<rect x="%.1f" y="%d" width="%.1f" height="%d" fill="%s"/>`+"\n", x, y, float64(cells)*cellWidth, cellHeight, ground)
		}
	}
	fmt.Fprintf(b, `<text xml:space="preserve" x="%.1f" y="%d" textLength="%.1f" lengthAdjust="spacingAndGlyphs" fill="%s"%s>%s</text>`+"\n",
		x, y+fontSize, float64(cells)*cellWidth, fill, more, html.EscapeString(text))
}

// eachStyle calls f for each run of a line with the codes of its style.
func eachStyle(line string, f func(text string, codes []int)) {
	var codes []int
	for line != "" {
		text, rest, styled := strings.Cut(line, "\x1b[")
		if text != "" {
			f(text, codes)
		}
		if !styled {
			return
		}
		set, after, _ := strings.Cut(rest, "m")
		codes = nil
		for _, s := range strings.Split(set, ";") {
			if code, err := strconv.Atoi(s); err == nil && code != 0 {
				codes = append(codes, code)
			}
		}
		line = after
	}
}

// width is the number of cells of a line, styles left out.
func width(line string) int {
	n := 0
	eachStyle(line, func(text string, _ []int) { n += utf8.RuneCountInString(text) })
	return n
}
