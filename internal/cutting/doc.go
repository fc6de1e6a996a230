// Package cutting computes what drilling asks of drill, spindle and grinder:
// thrust, torque and power, what thinning the web does to them, the pilot hole
// for a following drill, speed, feed and pecks, what a shank carries and how
// fast a grinding wheel may turn.
//
// Thrust and torque follow the Machinery's Handbook, 31st ed., pp. 1152-1153,
// whose chisel-edge factors are Shaw and Oxford's brackets (1957). Every
// function is pure. Lengths are in mm, angles in radians, feeds in mm per
// revolution, forces in N, torques in N m, powers in kW, cutting speeds in
// m/min, wheel speeds in m/s. An impossible input gives NaN.
//
// The figures that go in (work-material factors, feeds, reductions, allowed
// stresses) are arguments: this package holds formulas, not tables.
package cutting
