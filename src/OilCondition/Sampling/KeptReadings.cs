using System.Collections;
using OilCondition.Text;

namespace OilCondition;

/// <summary>The readings of one sample or sensor row: looked through, not hashed, since there are few in each and millions of rows.</summary>
internal sealed class KeptReadings : IReadOnlyDictionary<Measurand, Reading>
{
    private readonly KeyValuePair<Measurand, Reading>[] pairs;

    private KeptReadings(KeyValuePair<Measurand, Reading>[] pairs) => this.pairs = pairs;

    public int Count => pairs.Length;

    public IEnumerable<Measurand> Keys => pairs.Select(pair => pair.Key);

    public IEnumerable<Reading> Values => pairs.Select(pair => pair.Value);

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

        var copy = new KeyValuePair<Measurand, Reading>[Guard.NotNull(readings).Count];
        var next = 0;
        foreach (var pair in readings)
        {
            copy[next++] = pair;
        }

        return new KeptReadings(copy);
    }

    public bool ContainsKey(Measurand key) => TryGetValue(key, out _);

    public bool TryGetValue(Measurand key, out Reading value)
    {
        var hash = Guard.NotNull(key).GetHashCode();
        foreach (var pair in pairs)
        {
            if (pair.Key.GetHashCode() == hash && pair.Key.Equals(key))
            {
                value = pair.Value;
                return true;
            }
        }

        value = default;
        return false;
    }

    public IEnumerator<KeyValuePair<Measurand, Reading>> GetEnumerator() =>
        ((IEnumerable<KeyValuePair<Measurand, Reading>>)pairs).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
