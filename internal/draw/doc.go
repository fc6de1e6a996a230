// Package draw shows a drill's point to scale: seen from the end and from the
// side, as dots in a terminal or as a drawing on paper.
//
// It is pure: a [Drill], in millimetres and radians, becomes views made of
// polylines, and these become text or SVG. Nothing is read or written here.
//
// The drill stands in the frame of the geometry core: z along the axis and out
// of the point, x along lip 1, y the way lip 1 moves. The end view shows x
// upward and y to the left, the side view x upward and the point to the left,
// seen from the side of negative y; the two stand to each other as in
// third-angle projection, and the point angle shows at its true size.
//
// What a bench cannot measure is drawn as usual: see [Land].
package draw
