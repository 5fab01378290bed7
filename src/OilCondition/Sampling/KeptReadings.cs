using System.Collections;
using OilCondition.Text;

namespace OilCondition;

/// <summary>
/// The readings of one sample or sensor row: looked through, not hashed, since there are few in each and millions of rows. Rows of one file differ in
/// their numbers alone, so that they share all else.
/// </summary>
internal sealed class KeptReadings : IReadOnlyDictionary<Measurand, Reading>
{
    /// <summary>What the row before was made of: most often it is that of the next one as well.</summary>
    [ThreadStatic]
    private static Shape? latest;

    private readonly Shape shape;
    private readonly double[] values;

    private KeptReadings(Shape shape, double[] values)
    {
        this.shape = shape;
        this.values = values;
    }

    public int Count => values.Length;

    public IEnumerable<Measurand> Keys => shape.Measurands;

    public IEnumerable<Reading> Values => this.Select(pair => pair.Value);

    public Reading this[Measurand key] =>
        TryGetValue(key, out var reading)
            ? reading
            : throw new KeyNotFoundException($"There is no reading of {key.Name} ({key.Id}).");

    /// <summary>A copy, which no change of the original reaches.</summary>
    public static KeptReadings Of(IReadOnlyDictionary<Measurand, Reading> readings)
    {
        if (readings is KeptReadings kept)
        {
            return kept;
        }

        var copy = new double[Guard.NotNull(readings).Count];
        var known = latest is { } before && before.Measurands.Length == copy.Length ? before : null;
        var next = 0;
        foreach (var pair in readings)
        {
            copy[next] = pair.Value.Value;
            known = known is not null && known.Has(next, pair.Key, pair.Value) ? known : null;
            next++;
        }

        return new KeptReadings(known ?? (latest = Shape.Of(readings)), copy);
    }

    public bool ContainsKey(Measurand key) => shape.IndexOf(key) >= 0;

    public bool TryGetValue(Measurand key, out Reading value)
    {
        var index = shape.IndexOf(Guard.NotNull(key));
        value = index < 0 ? default : shape.Reading(index, values[index]);
        return index >= 0;
    }

    public IEnumerator<KeyValuePair<Measurand, Reading>> GetEnumerator()
    {
        for (var i = 0; i < values.Length; i++)
        {
            yield return new KeyValuePair<Measurand, Reading>(shape.Measurands[i], shape.Reading(i, values[i]));
        }
    }

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    /// <summary>What was read, in which order, with qualifiers and methods: all but the numbers.</summary>
    private sealed class Shape(Measurand[] measurands, (Qualifier Qualifier, string Method)[] marks)
    {
        public Measurand[] Measurands => measurands;

        public static Shape Of(IReadOnlyDictionary<Measurand, Reading> readings) =>
            new(
                [.. readings.Select(pair => pair.Key)],
                [.. readings.Select(pair => (pair.Value.Qualifier, pair.Value.Method))]
            );

        public Reading Reading(int index, double value) => new(value, marks[index].Qualifier, marks[index].Method);

        public bool Has(int index, Measurand measurand, Reading reading) =>
            ReferenceEquals(measurands[index], measurand)
            && marks[index].Qualifier == reading.Qualifier
            && string.Equals(marks[index].Method, reading.Method, StringComparison.Ordinal);

        public int IndexOf(Measurand measurand)
        {
            var hash = measurand.GetHashCode();
            for (var i = 0; i < measurands.Length; i++)
            {
                if (measurands[i].GetHashCode() == hash && measurands[i].Equals(measurand))
                {
                    return i;
                }
            }

            return -1;
        }
    }
}
