using System.Collections;

namespace OilCondition;

/// <summary>
/// The points of a series, in order of time. Most are readings of samples and nothing else, and a fleet has a million of them: such a point is made
/// when somebody looks at it.
/// </summary>
internal sealed class SeriesPoints(Measurand measurand, IPointSource[] sources) : IReadOnlyList<SeriesPoint>
{
    public IPointSource[] Sources => sources;

    public int Count => sources.Length;

    public SeriesPoint this[int index] => sources[index].PointOf(measurand);

    public IEnumerator<SeriesPoint> GetEnumerator()
    {
        foreach (var source in sources)
        {
            yield return source.PointOf(measurand);
        }
    }

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
