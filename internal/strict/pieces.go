package strict

import (
	"runtime"
	"slices"
	"strings"
	"sync"

	"gopkg.in/yaml.v3"
)

// A long file is nearly all one list, an item a line or a few, and the library
// reads on one processor: such a file is cut between items and its pieces are
// read side by side. They are taken only where nothing whatever is wrong with
// any of them and nothing in them reaches into another; every other file is read
// whole, which alone tells what is wrong with it.

// leastPiece is how many bytes are worth a piece, some 250 drills of a crib.
const leastPiece = 64 << 10

// A cut is mended on both sides: what is above it ends with an item, and what is
// below begins with a key and an item, so that the library meets what it would
// meet in the whole. What comes out at the seam has to be that item and no more.
const (
	stem = "list:\n"
	seam = "- seam\n"
)

// inPieces reads data in so many pieces, or reports that it has to be read whole.
func inPieces(text string, pieces int) (root *yaml.Node, taken bool) {
	if pieces < 2 || !cuttable(text) {
		return nil, false
	}
	indent, texts := cut(text, pieces)
	if len(texts) < 2 {
		return nil, false
	}
	parts := make([]*part, len(texts))
	var wg sync.WaitGroup
	above := 0
	for i, text := range texts {
		p := &part{text: text, above: above, indent: indent, first: i == 0, last: i == len(texts)-1}
		parts[i] = p
		wg.Add(1)
		go func() {
			defer wg.Done()
			p.read()
		}()
		above += strings.Count(text, "\n")
	}
	wg.Wait()
	return join(parts)
}

// pieces returns how many pieces are worth while for so many bytes: two for each
// processor, so that one that is busy elsewhere does not keep the others waiting.
func pieces(size int) int { return min(2*runtime.GOMAXPROCS(0), size/leastPiece) }

// cuttable reports whether a file is free of what counts across pieces: marks
// between documents, and ends of lines that are no line feed.
func cuttable(text string) bool {
	for _, mark := range []string{"---", "..."} {
		if strings.HasPrefix(text, mark) || strings.Contains(text, "\n"+mark) {
			return false
		}
	}
	for _, end := range []string{"\u0085", "\u2028", "\u2029"} {
		if strings.Contains(text, end) {
			return false
		}
	}
	return strings.Count(text, "\r") == strings.Count(text, "\r\n")
}

// cut cuts a text before items of its first list, which stand in so far, into so
// many pieces at most.
func cut(text string, pieces int) (indent int, texts []string) {
	indent, ok := listIndent(text)
	if !ok {
		return 0, nil
	}
	from := 0
	for p := 1; p < pieces; p++ {
		at := nextItem(text, indent, max(from, p*len(text)/pieces))
		if at < 0 {
			break
		}
		texts = append(texts, text[from:at])
		from = at
	}
	return indent, append(texts, text[from:])
}

// nextItem returns the byte at which a line begins that begins an item, the first
// one behind a byte at which the text can be cut; -1 for none.
func nextItem(text string, indent, at int) int {
	item := "\n" + strings.Repeat(" ", indent) + "- "
	for {
		next := strings.Index(text[at:], item)
		if next < 0 {
			return -1
		}
		if at += next + 1; unremarked(text, at) {
			return at
		}
	}
}

// listIndent returns how far the items of the first list stand in.
func listIndent(text string) (indent int, ok bool) {
	below := false // a key at the left edge
	for line := range strings.Lines(text) {
		said := strings.TrimLeft(line, " ")
		indent = len(line) - len(said)
		switch blank := strings.TrimSpace(said) == ""; {
		case blank || said[0] == '#':
		case below && strings.HasPrefix(said, "- "):
			return indent, true
		default:
			below = indent == 0 && strings.HasSuffix(strings.TrimSpace(said), ":")
		}
	}
	return 0, false
}

// unremarked reports whether no remark stands on the line that begins at a byte
// and on the last one above it that is not blank: which value a remark belongs to
// hangs on what surrounds it.
func unremarked(text string, at int) bool {
	above := strings.TrimRight(text[:at], " \r\n")
	below, _, _ := strings.Cut(text[at:], "\n")
	return !strings.Contains(above[strings.LastIndexByte(above, '\n')+1:], "#") && !strings.Contains(below, "#")
}

// part is a piece of a file.
type part struct {
	text        string
	above       int // lines of the file above it
	indent      int // of the list's items
	first, last bool

	root, key, list *yaml.Node // list is nil where the piece cannot be taken
}

// read makes nodes of a piece.
func (p *part) read() {
	text, above, mend := p.text, p.above, strings.Repeat(" ", p.indent)+seam
	if !p.first {
		text, above = stem+mend+text, above-2
	}
	if !p.last {
		text += mend
	}
	d, err := decode("", text)
	if err != nil || d.root.y == nil || len(d.faults) > 0 {
		return
	}
	if p.find(d.root.y) && p.unseam() {
		lower(p.root, above)
	} else {
		p.list = nil
	}
}

// find looks for the list: the last value of the first piece and the first value of
// any other.
func (p *part) find(root *yaml.Node) bool {
	if root.Kind != yaml.MappingNode || root.Column != 1 {
		return false
	}
	at := 0
	if p.first {
		at = len(root.Content) - 2
	}
	p.root, p.key, p.list = root, root.Content[at], root.Content[at+1]
	return p.list.Kind == yaml.SequenceNode
}

// unseam takes the items at the seams out of the list.
func (p *part) unseam() bool {
	from, to := 0, len(p.list.Content)
	if !p.first {
		from++
	}
	if !p.last {
		to--
	}
	seams := slices.Concat(p.list.Content[:from], p.list.Content[to:])
	p.list.Content = p.list.Content[from:to]
	return !slices.ContainsFunc(seams, func(n *yaml.Node) bool { return !isSeam(n) })
}

// isSeam reports whether a node is the item at a seam, and took up nothing of
// what is on the other side.
func isSeam(n *yaml.Node) bool {
	return n.Value == "seam" && n.HeadComment+n.LineComment+n.FootComment == ""
}

// lower moves a node and all in it down by so many lines.
func lower(n *yaml.Node, lines int) {
	n.Line += lines
	for _, c := range n.Content {
		lower(c, lines)
	}
}

// join makes one of the pieces.
func join(parts []*part) (root *yaml.Node, taken bool) {
	for _, p := range parts {
		if p.list == nil {
			return nil, false
		}
	}
	first, last := parts[0], parts[len(parts)-1]
	for _, p := range parts[1:] {
		first.list.Content = append(first.list.Content, p.list.Content...)
	}
	first.root.Content = append(first.root.Content, last.root.Content[2:]...)
	first.root.LineComment = last.root.LineComment
	first.key.FootComment = last.key.FootComment
	return first.root, true
}
