namespace Quarterlight.Fuzz;

/// <summary>
/// A toy with a defect behind three bytes, one branch each. Blindly that takes some 2^24 tries and more; step by step, with coverage, some
/// ten thousands. It shows that mutating, coverage, keeping and reporting work together.
/// </summary>
internal sealed class PlantedTarget : IFuzzTarget
{
    /// <summary>What it starts from.</summary>
    public static byte[] Seed => new byte[8];

    public void Take(byte[] input)
    {
        if (input.Length >= 5 && input[1] == 0x4B)
        {
            if (input[2] == 0xD3)
            {
                if (input[4] == 0x91)
                {
                    throw new InvalidOperationException("The planted defect.");
                }
            }
        }
    }

    public void TakeAgain(byte[] input)
    {
    }
}
