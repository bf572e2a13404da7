namespace Quarterlight.Fuzz;

/// <summary>
/// A toy with a defect behind four bytes, one branch each. Blindly that takes some 2^32 tries; step by step, with coverage, some
/// thousands. It shows that mutating, coverage, keeping and reporting work together.
/// </summary>
internal sealed class PlantedTarget : IFuzzTarget
{
    /// <summary>What it starts from.</summary>
    public static byte[] Seed => new byte[8];

    public void Take(byte[] input)
    {
        if (input.Length >= 6 && input[1] == 0x4B)
        {
            if (input[2] == 0xD3)
            {
                if (input[4] == 0x91)
                {
                    if (input[5] == 0x2E)
                    {
                        throw new InvalidOperationException("The planted defect.");
                    }
                }
            }
        }
    }

    public void TakeAgain(byte[] input)
    {
    }
}
