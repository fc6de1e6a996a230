package handbook

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
	CleanUp        float64 // taken beyond the wear, mm
	Every          float64 // stock of a usual grind, mm

	Own []Material // changed or added

	// Sources of a band about the point angle of which the shop has set one half.
	aimAlone, toleranceAlone Source
}

// Sign names the shop in every figure that it has set.
func (b *Book) Sign(shop string) {
	b.Source = Source{Label: Shop, Text: shop}
	b.aimAlone = Source{Label: Shop, Text: shop + ", the angle wanted; about it, " + pointToleranceSource.String()}
	b.toleranceAlone = Source{Label: Shop, Text: shop + ", the tolerance alone"}
	for i := range b.Own {
		b.Own[i].sign(&b.Source)
	}
}

// PointAngle returns the band about a wanted point angle.
func (b *Book) PointAngle(wanted float64) Band {
	if b == nil || b.PointTolerance == 0 {
		return PointAngle(wanted)
	}
	return Band{wanted - b.PointTolerance, wanted + b.PointTolerance, &b.toleranceAlone}
}

// ShopPointAngle is PointAngle about an angle that the shop has set.
func (b *Book) ShopPointAngle(wanted float64) Band {
	band := b.PointAngle(wanted)
	band.Source = &b.aimAlone
	if b.PointTolerance > 0 {
		band.Source = &b.Source
	}
	return band
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
		return WebTaper, webTaperSource
	}
	return b.Taper, &b.Source
}

// Allowance returns the clean-up taken beyond the wear, mm, and where it comes from.
func (b *Book) Allowance() (float64, *Source) {
	if b == nil || b.CleanUp == 0 {
		return CleanUp, CleanUpSource
	}
	return b.CleanUp, &b.Source
}

// UsualStock returns the stock of a usual grind, mm, that a shop has set; NaN
// where it follows from each drill.
func (b *Book) UsualStock() float64 {
	if b == nil || b.Every == 0 {
		return nan
	}
	return b.Every
}

// Material returns the material of that name, for reading only: the shop's,
// else the embedded.
func (b *Book) Material(name string) (*Material, bool) {
	if b != nil {
		known, _ := FindMaterial(name)
		for i := range b.Own {
			if own := &b.Own[i]; SameName(own.Name, name) || known != nil && own.Name == known.Name {
				return own, true
			}
		}
	}
	return FindMaterial(name)
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
	if !m.Clearance.Source.OfShop() {
		return Band{}, false
	}
	return m.Clearance, true
}

// ShopPoint reports whether a shop has set the point angle to grind; a nil
// Material is of no shop.
func (m *Material) ShopPoint() bool { return m != nil && m.PointSource.OfShop() }

// sign gives every figure that a shop has set the source that names it.
func (m *Material) sign(shop *Source) {
	for _, s := range [...]**Source{&m.Clearance.Source, &m.Chisel.Source, &m.Helix.Source, &m.Speed.Source, &m.PointSource, &m.KdThrustSource, &m.KdTorqueSource} {
		if (*s).OfShop() {
			*s = shop
		}
	}
}
