namespace OilCondition.LabFiles;

/// <summary>Finds the header: the row, and with it the delimiter, that names the keys and most of the columns that the map knows.</summary>
internal static class HeaderSearch
{
    private const int MostRows = 50;
    private const int MostCells = 20_000;

    /// <summary>The header and the way in which the file is divided; where there is none, the row that comes nearest to one.</summary>
    public static (Header Header, RowSource Way)? In(FileStart start, ColumnMap map, bool isLabFile)
    {
        (Header Header, RowSource Way)? best = null;
        do
        {
            best = null;
            foreach (var way in start.Ways(map))
            {
                if (InRows(way, map, isLabFile) is { } header && (best is null || IsBetter(header, best.Value.Header)))
                {
                    best = (header, way);
                }
            }
        } while (best is not { Header.IsComplete: true } && start.Grow());

        return best;
    }

    private static Header? InRows(RowSource rows, ColumnMap map, bool isLabFile)
    {
        var best = default(Header);
        var cells = 0;
        for (var i = 0; i < MostRows && rows.Read(); )
        {
            if (rows.IsBlank)
            {
                continue;
            }

            i++;
            cells += rows.Count;
            var header = Header.Match(rows, map, isLabFile);
            best = best is null || IsBetter(header, best) ? header : best;
            if (best.IsComplete && cells > MostCells)
            {
                break;
            }
        }

        return best;
    }

    private static bool IsBetter(Header one, Header other) =>
        one.IsComplete != other.IsComplete ? one.IsComplete
        : one.KnownCount != other.KnownCount ? one.KnownCount > other.KnownCount
        : !one.IsComplete && one.Columns.Count > other.Columns.Count;
}
