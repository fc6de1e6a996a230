package judge

import (
	"evenlip/internal/drill"
	"evenlip/internal/fault"
	"evenlip/internal/quantity"
)

// Cannot refuses a grind that would leave more web or chisel edge than drill. The
// readings must be possible, as [drill.Drill.Possible] tells.
func Cannot(d *drill.Drill) fault.List {
	if !d.Has(drill.Remove) {
		return nil
	}
	r := Compute(d)
	if r.Chisel.Ratio >= 1 || !(r.Web.After >= r.Drill.D || r.Web.RatioAfter >= 1) {
		return nil
	}
	at := drill.Remove
	if d.Has(drill.WebTaper) {
		at = drill.WebTaper
	}
	return fault.List{d.Refuse(at, "", "taking {} off with a web taper of {} leaves a web of {}: the drill itself is {}", quantity.MM(r.Web.Remove),
		quantity.Of(quantity.Taper, r.Web.Taper), quantity.MM(r.Web.After), quantity.MM(r.Drill.D))}
}
