using System.Runtime.InteropServices;

namespace OilCondition.Statistics;

/// <summary>Collects, rate by rate, the crossing times of all curves that are compatible with the readings.</summary>
/// <remarks>
/// For one rate the model is linear: y = floor + A e, with e = exp(−κ τ). A crossing at z = exp(−κ τ*) is compatible when
/// (target − floor − A z)² ≤ q(z) (limit − RSS), q(z) = x'(X'X)⁻¹x for x = (1, z): a quadratic inequality in z on 0 to 1.
/// </remarks>
[StructLayout(LayoutKind.Auto)]
internal struct CrossingEnvelope(ExponentialDecayFit fit, double limit, double target, double lowestFloor)
{
    private bool any;
    private bool open;
    private double earliest;
    private double latest;

    public void Add(ReadOnlySpan<double> times, ReadOnlySpan<double> values, double scaledRate)
    {
        var free = ExponentialDecay.Project(times, values, fit.Span, scaledRate, double.NegativeInfinity);
        var bounded = ExponentialDecay.Project(times, values, fit.Span, scaledRate, lowestFloor);
        if (bounded.ResidualSumOfSquares <= limit)
        {
            AddCurve(bounded, scaledRate);
        }

        var room = limit - free.ResidualSumOfSquares;
        if (room < 0 || free.Start <= free.Floor)
        {
            return;
        }

        // (X'X) of the columns 1 and e, about its mean.
        var count = times.Length;
        double meanE = 0;
        for (var i = 0; i < count; i++)
        {
            meanE += 1 - ExponentialDecay.Drop(times, i, fit.Span, scaledRate);
        }

        meanE /= count;
        double see = 0;
        for (var i = 0; i < count; i++)
        {
            var e = 1 - ExponentialDecay.Drop(times, i, fit.Span, scaledRate) - meanE;
            see += e * e;
        }

        if (!(see > 0))
        {
            return;
        }

        var amplitude = free.Start - free.Floor;
        var level = free.Floor - target;

        // (level + A z)² − room (1/n + (z − ē)²/See) ≤ 0
        var a = amplitude * amplitude - room / see;
        var halfB = level * amplitude + room * meanE / see;
        var c = level * level - room * (1.0 / count + meanE * meanE / see);
        AddCompatibleRange(a, halfB, c, scaledRate);
    }

    public readonly TimeToValueInterval ToInterval(bool hasEstimate, double estimate) =>
        new(hasEstimate, estimate, any, any ? earliest : 0, any && !open, any && !open ? latest : 0);

    private void AddCurve(DecayAtRate curve, double scaledRate)
    {
        if (curve.Start <= curve.Floor)
        {
            open = true;
        }
        else if (target > curve.Floor)
        {
            AddCrossing((target - curve.Floor) / (curve.Start - curve.Floor), scaledRate);
        }
        else
        {
            open = true;
        }
    }

    private void AddCompatibleRange(double a, double halfB, double c, double scaledRate)
    {
        // z = 0 is compatible: a curve that levels off at the target.
        open |= c <= 0;
        var discriminant = halfB * halfB - a * c;
        if (discriminant < 0 || a == 0)
        {
            return;
        }

        var root = Math.Sqrt(discriminant);
        AddBoundary((-halfB - root) / a, scaledRate);
        AddBoundary((-halfB + root) / a, scaledRate);
    }

    private void AddBoundary(double z, double scaledRate)
    {
        if (z > 0 && z <= 1)
        {
            // The floor that belongs to this end of the range must be one that is allowed; below it the bounded curve speaks.
            AddCrossing(z, scaledRate);
        }
    }

    private void AddCrossing(double z, double scaledRate)
    {
        if (!(z > 0) || double.IsInfinity(z))
        {
            return;
        }

        var time = fit.FirstTime + Math.Max(0, -Math.Log(Math.Min(1, z)) / scaledRate * fit.Span);
        earliest = any ? Math.Min(earliest, time) : time;
        latest = any ? Math.Max(latest, time) : time;
        any = true;
    }
}
