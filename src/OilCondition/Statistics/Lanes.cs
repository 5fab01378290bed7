#if NET
global using Lanes = System.Runtime.Intrinsics.Vector256<double>;
#else
global using Lanes = OilCondition.Statistics.FourDoubles;
#endif
