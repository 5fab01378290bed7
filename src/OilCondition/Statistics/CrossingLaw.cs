using System.Buffers;
using OilCondition.Text;

namespace OilCondition.Statistics;

/// <summary>When a limit is crossed, as a chance that grows with time. Times count from the last reading, in its unit.</summary>
/// <remarks>
/// A table, worked out once: the chance at times that halve from the latest down to where nothing is left of it, and in between wherever it grows by more
/// than 1/12 from one to the next, or by more than 1/25 where it bends or is below 1/8. Between its points the chance is a smooth curve over the logarithm of time, see
/// <see cref="MonotoneCubic"/>, so that every question, whichever way it is asked, has one answer. Below 1/8, where the way bends upward, it is the straight line: that
/// lies above the curve, and an early date is rather a little too early than too late. The chance is given that the limit is not crossed at the last reading. Given that it is not crossed at a later
/// time n either, it is (F(t) − F(n)) / (1 − F(n)). Where F(n) is 1 to nearly all digits, 'not crossed' contradicts the law, and the answer has few digits left.
/// </remarks>
internal sealed class CrossingLaw
{
    private const double LargestStep = 1.0 / 12;

    /// <summary>Below it the way is straight from point to point.</summary>
    private const double Early = 0.125;

    /// <summary>A step that is larger stands only where the way between its ends is as good as straight.</summary>
    private const double LargestBentStep = 0.04;
    private const double LargestBend = 0.006;
    private const double Nothing = 1e-4;
    private const double NarrowestStep = 1e-4;

    /// <summary>In the tails, from a chance of this on, the odds grow by no more than a factor from one point to the next.</summary>
    private const double SmallestTail = 2e-3;
    private const double LargestOdds = 3;
    private static readonly double Ln2 = Math.Log(2);

    /// <summary>A crossing within this part of the time that is looked at is one at once.</summary>
    private const double SmallestPart = 1e-7;

    /// <summary>About the root of the number of points.</summary>
    private const int Stride = 4;

    /// <summary>Points of all but a law in a hundred.</summary>
    private const int RoomForMost = 64;

    // Seven digits are more than a law has, and half of what a fleet that is kept would have to hold.
    private readonly float[] logTimes;
    private readonly float[] chances;

    private CrossingLaw(float[] logTimes, float[] chances, double latest)
    {
        this.logTimes = logTimes;
        this.chances = chances;
        Latest = latest;
    }

    /// <summary>How far the law was worked out.</summary>
    public double Latest { get; }

    /// <summary>Works out a law.</summary>
    /// <param name="passed">The chance that the limit has been crossed by a time above 0; where it falls it counts as staying.</param>
    /// <param name="latest">How far to look, above 0; later chances are those of the latest.</param>
    public static CrossingLaw Of(Func<double, double> passed, double latest)
    {
        var last = Math.Log(Guard.Positive(latest, ""));
        var earliest = last + Math.Log(SmallestPart);
        using var points = new PointsByTime(passed);
        for (var log = last; points.PutAhead(log) >= Nothing && log >= earliest; log -= Ln2)
        {
            // Halved until nothing of the chance is left.
        }

        points.Keep();
        while (points.AreAhead)
        {
            if (points.IsStepWide && points.Step > NarrowestStep)
            {
                points.PutAhead(points.Middle);
            }
            else
            {
                points.Keep();
            }
        }

        return new CrossingLaw(points.Logs, points.Chances, latest);
    }

    /// <summary>The same law with a clock that runs faster or slower from a time on.</summary>
    public CrossingLaw Aged(double since, double acceleration) =>
        Of(time => ChanceBefore(time <= since ? time : since + (time - since) * acceleration), Latest);

    /// <summary>The chance that the limit has been crossed by a time, F(t).</summary>
    /// <param name="time">Time since the last reading, 0 or more.</param>
    /// <returns>0 to 1, never falling.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The time is not finite or below 0.</exception>
    public double ChanceBefore(double time)
    {
        Guard.NotNegative(time, "");
        if (!(time > 0))
        {
            return 0;
        }

        var log = Math.Log(time);
        var after = FirstNotBelow(logTimes, log);
        if (after == 0)
        {
            // What has been reached by the first point is as good as reached at once.
            return chances[0] < Nothing ? 0 : chances[0];
        }

        if (after == logTimes.Length)
        {
            return chances[after - 1];
        }

        return Piece(after).At((log - logTimes[after - 1]) / Width(after));
    }

    /// <summary>The chance by a time, given that the limit is not crossed by an earlier one.</summary>
    /// <param name="time">The time.</param>
    /// <param name="intact">Time up to which the limit is known not to be crossed, 0 or more.</param>
    /// <returns>0 to 1; 0 up to that earlier time.</returns>
    public double ChanceBefore(double time, double intact) =>
        ChanceBefore(time, intact, ChanceBefore(Guard.NotNegative(intact, "")));

    /// <summary>The same where the chance by the earlier time is known.</summary>
    internal double ChanceBefore(double time, double intact, double begun) =>
        time > intact && begun < 1 ? Math.Max(0, Math.Min(1, (ChanceBefore(time) - begun) / (1 - begun))) : 0;

    /// <summary>The time by which the limit has been crossed with a chance, given that it has not been crossed by an earlier time.</summary>
    /// <param name="chance">The chance, above 0 and below 1.</param>
    /// <param name="intact">Time up to which the limit is known not to be crossed, 0 or more.</param>
    /// <param name="time">The time since the last reading, or 0 where the chance is not reached.</param>
    /// <returns>Whether the chance is reached by the latest time.</returns>
    public bool TryTime(double chance, double intact, out double time) =>
        TryTime(chance, intact, ChanceBefore(Guard.NotNegative(intact, "")), out time);

    /// <summary>The same where the chance by the earlier time is known.</summary>
    internal bool TryTime(double chance, double intact, double begun, out double time)
    {
        Guard.OpenUnitInterval(chance);
        var wanted = begun + chance * (1 - begun);
        time = 0;
        if (!(wanted < 1) || chances[chances.Length - 1] < wanted)
        {
            return false;
        }

        var after = FirstNotBelow(chances, wanted);
        if (after == 0)
        {
            time = intact;
            return true;
        }

        var log = logTimes[after - 1] + Piece(after).PartOf(wanted) * Width(after);
        time = Math.Max(intact, Math.Min(Latest, Math.Exp(log)));
        return true;
    }

    /// <summary>Index of the first of ascending figures that is not below a value, or how many there are: by strides, then one by one.</summary>
    private static int FirstNotBelow(float[] ascending, double value)
    {
        var at = 0;
        while (at + Stride < ascending.Length && ascending[at + Stride] < value)
        {
            at += Stride;
        }

        while (at < ascending.Length && ascending[at] < value)
        {
            at++;
        }

        return at;
    }

    /// <summary>The way from the point before one to it.</summary>
    private MonotoneCubic Piece(int after) =>
        chances[after - 1] < Early
            ? MonotoneCubic.Chord(chances[after - 1], chances[after])
            : new MonotoneCubic(logTimes, chances, after);

    private double Width(int after) => (double)logTimes[after] - logTimes[after - 1];

    /// <summary>The points of a law while it is worked out, by time: those that stay, and behind a gap those ahead.</summary>
    private sealed class PointsByTime(Func<double, double> passed) : IDisposable
    {
        private float[] logs = ArrayPool<float>.Shared.Rent(RoomForMost);
        private float[] chances = ArrayPool<float>.Shared.Rent(RoomForMost);
        private int kept;
        private int room = RoomForMost;
        private int ahead = RoomForMost;

        public bool AreAhead => ahead < room;

        /// <summary>From the latest point that stays to the next.</summary>
        public double Step => logs[ahead] - logs[kept - 1];

        public double Middle => (logs[kept - 1] + logs[ahead]) / 2.0;

        /// <summary>Whether the chance grows too far in the step: as such, for the way it bends or, in its tails, by its odds.</summary>
        public bool IsStepWide
        {
            get
            {
                double before = chances[kept - 1];
                double after = chances[ahead];
                return after - before > LargestStep
                    || (after - before > LargestBentStep && (before < Early || Math.Abs(Bend) > LargestBend))
                    || (
                        after > SmallestTail
                        && before < 1 - SmallestTail
                        && Math.Max(after, SmallestTail) * (1 - before)
                            > LargestOdds * Math.Max(before, SmallestTail) * (1 - after)
                    );
            }
        }

        public float[] Logs => logs.AsSpan(0, kept).ToArray();

        /// <summary>The chances, which never fall.</summary>
        public float[] Chances
        {
            get
            {
                float highest = 0;
                var rising = new float[kept];
                for (var i = 0; i < rising.Length; i++)
                {
                    highest = Math.Max(highest, chances[i]);
                    rising[i] = highest;
                }

                return rising;
            }
        }

        /// <summary>How far the way bends in the step, from the points at its ends and those beyond them.</summary>
        private double Bend
        {
            get
            {
                Span<float> x = stackalloc float[4];
                Span<float> y = stackalloc float[4];
                var count = 0;
                for (var i = Math.Max(0, kept - 2); i < kept; i++, count++)
                {
                    (x[count], y[count]) = (logs[i], chances[i]);
                }

                var after = count;
                for (var i = ahead; i < Math.Min(room, ahead + 2); i++, count++)
                {
                    (x[count], y[count]) = (logs[i], chances[i]);
                }

                return new MonotoneCubic(x[..count], y[..count], after).Bend;
            }
        }

        /// <summary>Puts a point before all that are ahead, and says its chance.</summary>
        public double PutAhead(double log)
        {
            if (kept == ahead)
            {
                Enlarge();
            }

            ahead--;
            logs[ahead] = (float)log;
            chances[ahead] = (float)Math.Min(1, Math.Max(0, passed(Math.Exp(logs[ahead]))));
            return chances[ahead];
        }

        /// <summary>Lets the first point ahead stay.</summary>
        public void Keep()
        {
            (logs[kept], chances[kept]) = (logs[ahead], chances[ahead]);
            kept++;
            ahead++;
        }

        public void Dispose()
        {
            ArrayPool<float>.Shared.Return(logs);
            ArrayPool<float>.Shared.Return(chances);
        }

        private void Enlarge()
        {
            (logs, chances) = (Larger(logs), Larger(chances));
            (ahead, room) = (ahead + room, 2 * room);
        }

        private float[] Larger(float[] full)
        {
            var larger = ArrayPool<float>.Shared.Rent(2 * room);
            full.AsSpan(0, kept).CopyTo(larger);
            full.AsSpan(ahead, room - ahead).CopyTo(larger.AsSpan(ahead + room));
            ArrayPool<float>.Shared.Return(full);
            return larger;
        }
    }
}
