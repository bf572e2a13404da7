namespace Quarterlight.Fuzz;

/// <summary>What is fuzzed. Whatever it throws is a finding.</summary>
internal interface IFuzzTarget
{
    /// <summary>Takes one input.</summary>
    void Take(byte[] input);

    /// <summary>Looks at an input longer; done for those that reached something new.</summary>
    void TakeAgain(byte[] input);
}
