package point

import "math"

// Vec is a vector in the drill's frame.
type Vec struct{ X, Y, Z float64 }

// Add returns v + u.
func (v Vec) Add(u Vec) Vec { return Vec{v.X + u.X, v.Y + u.Y, v.Z + u.Z} }

// Sub returns v - u.
func (v Vec) Sub(u Vec) Vec { return Vec{v.X - u.X, v.Y - u.Y, v.Z - u.Z} }

// Scale returns v times s.
func (v Vec) Scale(s float64) Vec { return Vec{v.X * s, v.Y * s, v.Z * s} }

// Dot returns the scalar product.
func (v Vec) Dot(u Vec) float64 { return v.X*u.X + v.Y*u.Y + v.Z*u.Z }

// Cross returns the vector product.
func (v Vec) Cross(u Vec) Vec {
	return Vec{v.Y*u.Z - v.Z*u.Y, v.Z*u.X - v.X*u.Z, v.X*u.Y - v.Y*u.X}
}

// Norm returns the length.
func (v Vec) Norm() float64 { return math.Sqrt(v.Dot(v)) }

// across returns the part of v square to the unit vector u.
func (v Vec) across(u Vec) Vec { return v.Sub(u.Scale(v.Dot(u))) }
