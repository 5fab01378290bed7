namespace OilCondition.Statistics;

/// <summary>A clock that runs with the rate: slower in colder oil. At the last reading and after it, it is the plain one.</summary>
/// <remarks>
/// With dy/dt = −k exp(b (T(t) − T_n)) (y − floor) the fall is one exponential in τ, dτ = exp(b (T − T_n)) dt (derived). Between two readings the temperature is
/// a straight line, over which the integral is closed-form. T_n is that of the last reading: what follows is forecast as warm as that.
/// </remarks>
internal sealed class DecayClock
{
    private readonly double[] plain;
    private readonly double[] own;
    private readonly double firstSpeed;

    /// <param name="times">Plain times, in order.</param>
    /// <param name="kelvins">Temperature less that of the last reading, at each of them.</param>
    /// <param name="perKelvin">b, 0 or more.</param>
    public DecayClock(double[] times, double[] kelvins, double perKelvin)
    {
        PerKelvin = perKelvin;
        plain = times;
        own = times.ToArray();
        firstSpeed = Math.Exp(perKelvin * kelvins[0]);
        for (var i = times.Length - 2; i >= 0; i--)
        {
            own[i] = own[i + 1] - (times[i + 1] - times[i]) * Mean(perKelvin * kelvins[i], perKelvin * kelvins[i + 1]);
        }
    }

    public double PerKelvin { get; }

    public IReadOnlyList<double> Times => own;

    /// <summary>The plain time on this clock.</summary>
    public double FromPlain(double time) => Between(time, plain, own, firstSpeed);

    /// <summary>What this clock shows, as plain time.</summary>
    public double ToPlain(double time) => Between(time, own, plain, 1 / firstSpeed);

    /// <summary>Mean of exp over a straight line of its exponent.</summary>
    private static double Mean(double from, double to)
    {
        var rise = to - from;
        return Math.Exp(from) * (Math.Abs(rise) < 1e-9 ? 1 + rise / 2 : (Math.Exp(rise) - 1) / rise);
    }

    private static double Between(double at, double[] from, double[] to, double speedBefore)
    {
        var last = from.Length - 1;
        if (at >= from[last])
        {
            return to[last] + (at - from[last]);
        }

        if (at <= from[0])
        {
            return to[0] + (at - from[0]) * speedBefore;
        }

        var i = Array.BinarySearch(from, at);
        i = i >= 0 ? i : ~i - 1;
        return to[i] + (at - from[i]) / (from[i + 1] - from[i]) * (to[i + 1] - to[i]);
    }
}
