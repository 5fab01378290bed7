using System.Globalization;
using OilCondition.Text;

namespace OilCondition;

/// <summary>
/// When a level is reached: exactly one of the nested cases. A case has only the moments that exist, so that nobody reads a date for what
/// never comes.
/// </summary>
/// <remarks>
/// One shape for all who ask: <see cref="DateTimeOffset"/> for readings of a plant, <see cref="TimeSpan"/> from the start for a plan,
/// <see cref="double"/> in the caller's unit for plain numbers. Why a level is not reached is told by what was asked, beside this answer.
/// </remarks>
/// <typeparam name="T">Moment, span of time from the start, or plain number.</typeparam>
public abstract class Arrival<T>
    where T : struct, IComparable<T>
{
    private Arrival(double? confidence, bool coverageInDoubt)
    {
        Confidence = confidence;
        CoverageInDoubt = coverageInDoubt;
    }

    /// <summary>Two-sided confidence level of the ends; null where nothing scatters, as in a plan.</summary>
    public double? Confidence { get; }

    /// <summary>Whether the readings follow one another so closely that the ends hold less often than stated.</summary>
    public bool CoverageInDoubt { get; }

    /// <summary>The level is reached already.</summary>
    public sealed class Already : Arrival<T>
    {
        internal Already(T at, bool isDemonstrated = true, double? confidence = null, bool coverageInDoubt = false)
            : base(confidence, coverageInDoubt)
        {
            At = at;
            IsDemonstrated = isDemonstrated;
        }

        /// <summary>When it was reached; the start where it was so from the start.</summary>
        public T At { get; }

        /// <summary>Whether every course compatible with the readings has reached it: the best one gets there before that is shown.</summary>
        public bool IsDemonstrated { get; }

        /// <inheritdoc/>
        public override string ToString() => $"reached {Word(At)}";
    }

    /// <summary>The level is expected to be reached, between two ends.</summary>
    public sealed class Expected : Arrival<T>
    {
        internal Expected(T earliest, T estimate, T latest, double? confidence = null, bool coverageInDoubt = false)
            : base(confidence, coverageInDoubt)
        {
            Earliest = earliest;
            Estimate = estimate;
            Latest = latest;
        }

        internal Expected(T estimate)
            : this(estimate, estimate, estimate) { }

        /// <summary>Earliest moment compatible with what is known.</summary>
        public T Earliest { get; }

        /// <summary>Best estimate.</summary>
        public T Estimate { get; }

        /// <summary>Latest moment compatible with what is known.</summary>
        public T Latest { get; }

        /// <inheritdoc/>
        public override string ToString() =>
            Word(Earliest) == Word(Latest)
                ? $"expected {Word(Estimate)}"
                : $"expected {Word(Estimate)} ({Word(Earliest)} to {Word(Latest)})";
    }

    /// <summary>The level is not reached before a moment, and nothing shows yet that it will be reached.</summary>
    public sealed class NotBefore : Arrival<T>
    {
        internal NotBefore(T earliest, double? confidence = null, bool coverageInDoubt = false)
            : base(confidence, coverageInDoubt) => Earliest = earliest;

        /// <summary>Earliest moment compatible with what is known.</summary>
        public T Earliest { get; }

        /// <inheritdoc/>
        public override string ToString() => $"not before {Word(Earliest)}";
    }

    /// <summary>The level is not reached on this course.</summary>
    public sealed class Never : Arrival<T>
    {
        internal Never(double? confidence = null, bool coverageInDoubt = false)
            : base(confidence, coverageInDoubt) { }

        /// <inheritdoc/>
        public override string ToString() => "never on this course";
    }

    /// <summary>What is known does not tell; what was asked says why.</summary>
    public sealed class NotDetermined : Arrival<T>
    {
        internal NotDetermined(double? confidence = null)
            : base(confidence, coverageInDoubt: false) { }

        /// <inheritdoc/>
        public override string ToString() => "not determined";
    }

    /// <summary>The best estimate, where there is one.</summary>
    /// <param name="estimate">When the level is, or was, reached by the best estimate.</param>
    /// <returns>False where no moment can be named.</returns>
    public bool TryEstimate(out T estimate)
    {
        estimate = this switch
        {
            Already already => already.At,
            Expected expected => expected.Estimate,
            _ => default,
        };
        return this is Already or Expected;
    }

    /// <summary>The same answer on another axis of time, such as moments from spans and a start.</summary>
    internal Arrival<TOther> On<TOther>(Func<T, TOther> axis)
        where TOther : struct, IComparable<TOther> =>
        this switch
        {
            Already it => new Arrival<TOther>.Already(axis(it.At), it.IsDemonstrated, Confidence, CoverageInDoubt),
            Expected it => new Arrival<TOther>.Expected(
                axis(it.Earliest),
                axis(it.Estimate),
                axis(it.Latest),
                Confidence,
                CoverageInDoubt
            ),
            NotBefore it => new Arrival<TOther>.NotBefore(axis(it.Earliest), Confidence, CoverageInDoubt),
            Never => new Arrival<TOther>.Never(Confidence, CoverageInDoubt),
            _ => new Arrival<TOther>.NotDetermined(Confidence),
        };

    private static string Word(T time) =>
        time switch
        {
            DateTimeOffset at => PlainText.Time(at),
            TimeSpan span => $"{PlainText.Number(span.TotalHours)} h",
            IFormattable number => number.ToString("G4", CultureInfo.InvariantCulture),
            _ => time.ToString()!,
        };
}
