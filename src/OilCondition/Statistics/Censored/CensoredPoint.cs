using System.Runtime.InteropServices;

namespace OilCondition.Statistics;

/// <summary>A curve with its scatter in the coordinates in which the censored likelihood is concave: floor/σ, amplitude/σ, 1/σ.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct CensoredPoint(double Floor, double Amplitude, double InverseScatter)
{
    public CensoredPoint Moved(in CensoredPoint by, double share) =>
        new(Floor + share * by.Floor, Amplitude + share * by.Amplitude, InverseScatter + share * by.InverseScatter);

    /// <summary>Whether floor, amplitude and scatter differ by less than a part of the unit of the values.</summary>
    public bool IsCloseTo(in CensoredPoint other, double part) =>
        Math.Abs(Floor / InverseScatter - other.Floor / other.InverseScatter) < part
        && Math.Abs(Amplitude / InverseScatter - other.Amplitude / other.InverseScatter) < part
        && Math.Abs(InverseScatter / other.InverseScatter - 1) < part;
}
