using System.Diagnostics.CodeAnalysis;
using OilCondition.Text;

namespace OilCondition.Limits;

/// <summary>The limits of one measurand, with where they come from.</summary>
public sealed partial class Limit
{
    /// <summary>A limit.</summary>
    /// <param name="measurand">What is limited.</param>
    /// <param name="kind">What the figures are measured from.</param>
    /// <param name="upper">Figures not to be exceeded; null for none.</param>
    /// <param name="lower">Figures not to be undercut; null for none.</param>
    /// <param name="source">Where the figures come from.</param>
    /// <param name="deadBand">
    /// How far inside a figure a reading must come back before the state falls again, in the unit of what is compared; 0 for
    /// none. Against flapping: choose it not narrower than the test method's repeatability.
    /// </param>
    /// <param name="confirmations">
    /// Successive readings beyond a figure that it takes to believe it, 1 to 10; null for 2 with an own-history limit, whose percentiles sound readings
    /// pass by chance, and for 1 with others.
    /// </param>
    /// <param name="per">For a rate of change: per which span the figures are meant, above 0 and up to 10 years; null otherwise.</param>
    /// <param name="overOilHours">For a rate of change: whether the span is one of oil hours and not of the calendar.</param>
    /// <param name="note">What people should know of it; empty for nothing.</param>
    /// <exception cref="ArgumentException">
    /// There is neither an upper nor a lower band, the alarm comes before the alert, the lower band does not lie below the upper one, the dead band is so
    /// wide that no reading could come back, or a rate of change has no span.
    /// </exception>
    /// <exception cref="ArgumentOutOfRangeException">The dead band is negative, or the confirmations lie outside 1 to 10.</exception>
    public Limit(
        Measurand measurand,
        LimitKind kind,
        LimitBand? upper,
        LimitBand? lower,
        Source source,
        double deadBand = 0,
        int? confirmations = null,
        TimeSpan? per = null,
        bool overOilHours = false,
        string note = ""
    )
        : this(upper, lower, measurand, kind, source, deadBand, confirmations, per, overOilHours, note)
    {
        if (LimitContradiction.Within(this) is { } contradiction)
        {
            throw new ArgumentException(
                contradiction,
                contradiction.StartsWith("The dead", StringComparison.Ordinal) ? nameof(deadBand) : nameof(lower)
            );
        }
    }

    /// <summary>A limit that may be derived from figures of the oil or of a fleet, which nobody stated.</summary>
    private Limit(
        LimitBand? upper,
        LimitBand? lower,
        Measurand measurand,
        LimitKind kind,
        Source source,
        double deadBand,
        int? confirmations,
        TimeSpan? per,
        bool overOilHours,
        string note
    )
    {
        Note = Guard.NotNull(note);
        Measurand = Guard.NotNull(measurand);
        Source = Guard.NotNull(source);
        Kind = kind;
        if (upper is null && lower is null)
        {
            throw new ArgumentException(
                $"The limit of {measurand.Id} has neither an upper nor a lower band.",
                nameof(upper)
            );
        }

        if (upper is { Alert: { } upperAlert, Alarm: { } upperAlarm } && upperAlarm < upperAlert)
        {
            throw new ArgumentException(
                $"The upper limit of {measurand.Id} has its alarm ({upperAlarm}) below its alert ({upperAlert}).",
                nameof(upper)
            );
        }

        if (lower is { Alert: { } lowerAlert, Alarm: { } lowerAlarm } && lowerAlarm > lowerAlert)
        {
            throw new ArgumentException(
                $"The lower limit of {measurand.Id} has its alarm ({lowerAlarm}) above its alert ({lowerAlert}).",
                nameof(lower)
            );
        }

        if (kind == LimitKind.RateOfChange != per is not null)
        {
            throw new ArgumentException(
                $"The limit of {measurand.Id} is of kind {kind}; a span belongs to a rate of change, and only to it.",
                nameof(per)
            );
        }

        if (per is { } span)
        {
            Guard.Positive(span.TotalHours, "h", nameof(per));
            Guard.InRange(span.TotalHours, 0, 87_660, "h", nameof(per));
        }

        if (kind is LimitKind.OwnHistory or LimitKind.Fleet)
        {
            CheckPercentiles(upper, 50, 99.99, nameof(upper));
            CheckPercentiles(lower, 0.01, 49.99, nameof(lower));
        }

        Upper = upper;
        Lower = lower;
        DeadBand = Guard.InRange(deadBand, 0, LimitBand.Largest, measurand.Unit);
        Confirmations = confirmations ?? (kind == LimitKind.OwnHistory ? 2 : 1);
        Guard.InRange(Confirmations, 1, 10, "readings", nameof(confirmations));
        Per = per;
        OverOilHours = per is not null && overOilHours;
    }

    /// <summary>What is limited.</summary>
    public Measurand Measurand { get; }

    /// <summary>What the figures are measured from.</summary>
    public LimitKind Kind { get; }

    /// <summary>Figures not to be exceeded; null for none.</summary>
    public LimitBand? Upper { get; }

    /// <summary>Figures not to be undercut; null for none.</summary>
    public LimitBand? Lower { get; }

    /// <summary>Where the figures come from.</summary>
    public Source Source { get; }

    /// <summary>How far inside a figure a reading must come back before the state falls again.</summary>
    public double DeadBand { get; }

    /// <summary>Successive readings beyond a figure that it takes to believe it.</summary>
    public int Confirmations { get; }

    /// <summary>What people should know of it; empty for nothing.</summary>
    public string Note { get; }

    /// <summary>Percentiles that the fleet of <see cref="LimitSet.WithFleet"/> did not give, alert before alarm; a limit set that is written and read again has lost them.</summary>
    public IReadOnlyList<MissingFigure> MissingFigures { get; private init; } = [];

    /// <summary>Per which span the figures of a rate of change are meant; null for other kinds.</summary>
    public TimeSpan? Per { get; }

    /// <summary>Whether that span is one of oil hours.</summary>
    public bool OverOilHours { get; }

    /// <summary>This limit as figures of the reading itself, for one oil.</summary>
    /// <remarks>Change: new value + figure. Percentage: new value (1 + figure / 100); a lower figure is negative.</remarks>
    /// <param name="oil">The oil, for its new-oil values.</param>
    /// <param name="absolute">The limit on the reading itself, or null.</param>
    /// <returns>
    /// False when the limit is a change and the new-oil value is missing or only bounded, and for a rate of change and for statistical limits,
    /// which are no fixed figures of the reading.
    /// </returns>
    public bool TryResolve(Oil oil, [NotNullWhen(true)] out Limit? absolute)
    {
        Guard.NotNull(oil);
        absolute = Kind switch
        {
            LimitKind.Absolute => this,
            LimitKind.ChangeFromNew or LimitKind.PercentChangeFromNew => FromNew(oil),
            _ => null,
        };
        return absolute is not null;
    }

    /// <summary>The figures of a change from new oil; null where the new oil was not read.</summary>
    private Limit? FromNew(Oil oil) =>
        oil.NewReadings.TryGetValue(Measurand, out var reading) && !reading.IsCensored
            ? AsAbsolute(
                Kind == LimitKind.ChangeFromNew
                    ? figure => reading.Value + figure
                    : figure => reading.Value * (1 + figure / 100),
                Source
            )
            : null;

    /// <summary>Compares one reading with this limit; a limit that needs more than one reading is not determined by it.</summary>
    /// <param name="oil">The oil, for its new-oil values.</param>
    /// <param name="reading">The reading, in the measurand's unit; null when there is none.</param>
    /// <returns>The state and its reason.</returns>
    public LimitEvaluation Evaluate(Oil oil, Reading? reading)
    {
        if (!TryResolve(oil, out var absolute))
        {
            return LimitEvaluation.Undetermined(this, Unresolved, reading);
        }

        return reading is { } value
            ? new LimitWalk(this, absolute).Over([(null, value)], value, null)
            : LimitEvaluation.Undetermined(this, LimitReason.NoReading, null, absolute);
    }

    /// <summary>Compares a series of readings with this limit, with dead band and confirmations.</summary>
    /// <remarks>
    /// <para>
    /// The readings are taken in order of time. The state rises when as many successive readings as there are confirmations lie beyond a
    /// figure (to the lowest zone among them), and falls when one reading comes back inside the figure by the dead band. A rise that still
    /// waits is told by <see cref="LimitEvaluation.Pending"/>.
    /// </para>
    /// <para>
    /// Rate of change: (x(n) − x(n−1)) / (t(n) − t(n−1)), scaled to the span of <see cref="Per"/> (common practice); readings less than a
    /// day after the one before are not differenced with it, and readings that are only bounds are passed over.
    /// </para>
    /// <para>
    /// Own history: the figures are percentiles. The readings before those to be judged, without a trend, wild ones and what lay before a sudden
    /// change left out, give the normal tolerance limit mean ± k s of the percentile with 90 % confidence (ln scale for a logarithmic
    /// measurand); s is at least the last digit of the readings over sqrt(6), which rounding hides. Readings that are bounds do not enter. Eight
    /// such readings are needed, and none is given when they move by themselves. Few readings give wide limits, as they
    /// should: mean + 2 s of ten readings is no 97.5 % limit. See <see cref="Statistics.ToleranceLimits"/>.
    /// </para>
    /// <para>
    /// Fleet: not determined; <see cref="LimitSet.WithFleet"/> puts absolute figures in place of the percentiles.
    /// </para>
    /// </remarks>
    /// <param name="oil">The oil, for its new-oil values.</param>
    /// <param name="series">The readings of the limit's measurand.</param>
    /// <returns>The state after the latest reading, and its reason.</returns>
    /// <exception cref="ArgumentException">The series is one of another measurand.</exception>
    public LimitEvaluation Evaluate(Oil oil, MeasurandSeries series)
    {
        Guard.NotNull(oil);
        Guard.NotNull(series);
        if (!series.Measurand.Equals(Measurand))
        {
            throw new ArgumentException(
                $"series is one of {series.Measurand.Id}; the limit is one of {Measurand.Id}.",
                nameof(series)
            );
        }

        if (series.Points.Count == 0)
        {
            TryResolve(oil, out var figures);
            return LimitEvaluation.Undetermined(this, LimitReason.NoReading, null, figures);
        }

        var latest = series.ReadingOf(series.Points.Count - 1);
        switch (Kind)
        {
            case LimitKind.RateOfChange:
                return LimitRate.TryRates(this, series, out var rates)
                    ? new LimitWalk(this, this).Over(rates, latest, rates[rates.Count - 1].Reading.Value)
                    : LimitEvaluation.Undetermined(this, LimitReason.TooFewReadings, latest);
            case LimitKind.OwnHistory:
                return OwnHistoryLimit.TryFigures(this, series, out var own, out var reason)
                    ? new LimitWalk(this, own).Over(series)
                    : LimitEvaluation.Undetermined(this, reason, latest);
            default:
                return TryResolve(oil, out var absolute)
                    ? new LimitWalk(this, absolute).Over(series)
                    : LimitEvaluation.Undetermined(this, Unresolved, latest);
        }
    }

    internal Limit AsAbsolute(Func<double, double> map, Source source) =>
        new(
            Upper?.Map(map),
            Lower?.Map(map),
            Measurand,
            LimitKind.Absolute,
            source,
            DeadBand,
            Confirmations,
            per: null,
            overOilHours: false,
            Note
        );

    /// <summary>With the figures that a fleet gave; where it gave none, these percentiles, which are then not determined.</summary>
    internal Limit OfFleet(LimitBand? upper, LimitBand? lower, IReadOnlyList<MissingFigure> missing, Source source)
    {
        var gives = upper is not null || lower is not null;
        return new Limit(
            gives ? upper : Upper,
            gives ? lower : Lower,
            Measurand,
            gives ? LimitKind.Absolute : Kind,
            gives ? source : Source,
            DeadBand,
            Confirmations,
            per: null,
            overOilHours: false,
            Note
        )
        {
            MissingFigures = missing,
        };
    }

    private static void CheckPercentiles(LimitBand? band, double lowest, double highest, string name)
    {
        foreach (var figure in new[] { band?.Alert, band?.Alarm }.OfType<double>())
        {
            Guard.InRange(figure, lowest, highest, "%", name);
        }
    }

    private LimitReason Unresolved =>
        Kind switch
        {
            LimitKind.Fleet => MissingFigures.Count > 0 ? MissingFigures[0].Reason : LimitReason.NoFleet,
            LimitKind.RateOfChange or LimitKind.OwnHistory => LimitReason.TooFewReadings,
            _ => LimitReason.NewOilValueMissing,
        };

    /// <summary>What is limited, how, and by which figures.</summary>
    /// <returns>For example <c>water content, absolute, above alert 200, alarm 500 mg/kg</c>.</returns>
    public override string ToString() =>
        $"{Measurand.Name}, {PlainText.Spaced(Kind)}, "
        + string.Join(
            "; ",
            new[] { Upper is null ? null : $"above {Upper}", Lower is null ? null : $"below {Lower}" }.OfType<string>()
        )
        + (FigureUnit.Length == 0 ? "" : " " + FigureUnit);

    /// <summary>Unit of its figures, with the span of a rate.</summary>
    internal string FigureUnit =>
        Kind switch
        {
            LimitKind.PercentChangeFromNew or LimitKind.OwnHistory or LimitKind.Fleet => "%",
            LimitKind.RateOfChange =>
                $"{Measurand.Unit} per {PlainText.Number(OverOilHours ? Per!.Value.TotalHours : Per!.Value.TotalDays)} {(OverOilHours ? "oil hours" : "days")}".TrimStart(),
            _ => Measurand.Unit,
        };
}
