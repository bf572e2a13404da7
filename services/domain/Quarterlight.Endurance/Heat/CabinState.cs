namespace Quarterlight.Endurance.Heat;

/// <summary>The cabin at one moment.</summary>
internal record struct CabinState(double AirC, double InteriorC, double WaterRatio, double Co2Ppm);
