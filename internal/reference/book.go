package reference

import "math"

// Book is what is in force: the embedded limits and materials, with a shop's
// own in their place where it has set any. A nil Book is the embedded one. A
// field that is zero leaves the embedded figure alone.
type Book struct {
	Source Source // label Shop; the source of every figure that is set here

	PointTolerance float64 // about the wanted point angle, radians
	Chisel         Band    // obtuse chisel-edge angle, radians
	LipHeightMost  float64 // mm, either way
	ChiselMost     float64 // c/D
	FlankMost      float64 // mm
	MarginMost     float64 // diameters
	ChipRoom       float64 // diameters
	WebMost        float64 // w/D
	Taper          float64 // web taper, mm per mm

	Own []Material // changed or added
}

// PointAngle returns the band about a wanted point angle.
func (b *Book) PointAngle(wanted float64) Band {
	if b == nil || b.PointTolerance == 0 {
		return PointAngle(wanted)
	}
	return Band{wanted - b.PointTolerance, wanted + b.PointTolerance, &b.Source}
}

// ChiselAngle returns the band of the obtuse chisel-edge angle.
func (b *Book) ChiselAngle() Band {
	if b == nil || b.Chisel.High == 0 {
		return ChiselAngle
	}
	return Band{b.Chisel.Low, b.Chisel.High, &b.Source}
}

// LipHeight returns the band of the lip-height difference for diameter d.
func (b *Book) LipHeight(d float64) Band {
	if b == nil || b.LipHeightMost == 0 {
		return LipHeight(d)
	}
	return Band{-b.LipHeightMost, b.LipHeightMost, &b.Source}
}

// ChiselRatio returns the band of c/D that needs no thinning.
func (b *Book) ChiselRatio(d float64) Band {
	if b == nil || b.ChiselMost == 0 {
		return ChiselRatio(d)
	}
	return Band{0, b.ChiselMost, &b.Source}
}

// FlankWear returns the band of flank land with which a drill may go on.
func (b *Book) FlankWear(d float64) Band {
	if b == nil || b.FlankMost == 0 {
		return FlankWear(d)
	}
	return Band{0, b.FlankMost, &b.Source}
}

// MarginWear returns how far back a margin may be worn and still be ground out,
// spare being the flute that the job does not need.
func (b *Book) MarginWear(d, spare float64) Band {
	if b == nil || b.MarginMost == 0 {
		return MarginWear(d, spare)
	}
	return Band{0, b.MarginMost * d, &b.Source}
}

// FluteNeeded returns the least flute for a hole of that depth.
func (b *Book) FluteNeeded(d, depth float64) Band {
	if b == nil || b.ChipRoom == 0 {
		return FluteNeeded(d, depth)
	}
	return Band{depth + b.ChipRoom*d, math.Inf(1), &b.Source}
}

// WebLimit returns the band of w/D that thinning can answer.
func (b *Book) WebLimit() Band {
	if b == nil || b.WebMost == 0 {
		return WebLimit
	}
	return Band{0, b.WebMost, &b.Source}
}

// WebTaper returns the usual growth of the web and where it comes from.
func (b *Book) WebTaper() (float64, *Source) {
	if b == nil || b.Taper == 0 {
		return WebTaper, &webTaperSource
	}
	return b.Taper, &b.Source
}

// Material returns the material of that name, for reading only: the shop's,
// else the embedded.
func (b *Book) Material(name string) (*Material, bool) {
	if b != nil {
		plain := plainName(name)
		for i := range b.Own {
			if b.Own[i].Name == plain {
				return &b.Own[i], true
			}
		}
	}
	return SharedMaterial(name)
}

// Materials returns every material, the shop's own in place of the embedded
// ones and its additions at the end.
func (b *Book) Materials() []Material {
	out := Materials()
	if b == nil {
		return out
	}
next:
	for _, own := range b.Own {
		for i := range out {
			if out[i].Name == own.Name {
				out[i] = own
				continue next
			}
		}
		out = append(out, own)
	}
	return out
}

// ShopClearance returns the band of the lip clearance that a shop has set for
// the material; ok is false where the table by size holds.
func (m *Material) ShopClearance() (Band, bool) {
	if m.Clearance.Source == nil || m.Clearance.Source.Label != Shop {
		return Band{}, false
	}
	return m.Clearance, true
}
