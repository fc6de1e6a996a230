package handbook

// Tables returns every embedded table, in the order that sources prints them.
func Tables() []Table {
	var out []Table
	for _, tables := range [][]Table{
		toleranceTables(), clearanceTables(), webTables(), wearTables(), regrindTables(),
		MaterialTables(), ForceTables(), SpeedTables(), FeedTables(), HoleTables(), ShankTables(),
		ThinningTables(), fireTables(), SizeTables(), undersizeTables(), fluteTables(), speedPickTables(), grinderTables(), bodyTables(),
	} {
		out = append(out, tables...)
	}
	return out
}
