using Grpc.Core;
using Quarterlight.V1;

namespace Quarterlight.Chat.Tests;

/// <summary>The services of heat, run time and noise, answering as a test tells them to; without one it has none of the calls, as an older planner.</summary>
public sealed class FakeEndurance(CannedForecasts? canned) : EnduranceService.EnduranceServiceBase
{
    public override Task<ForecastHeatResponse> ForecastHeat(ForecastHeatRequest request, ServerCallContext context) => Task.FromResult(Canned.Answer(request));

    public override Task<ForecastRunTimeResponse> ForecastRunTime(ForecastRunTimeRequest request, ServerCallContext context) => Task.FromResult(Canned.Answer(request));

    private CannedForecasts Canned => canned ?? throw new RpcException(new Status(StatusCode.Unimplemented, ""));
}

/// <summary>The noise service of <see cref="FakeEndurance"/>.</summary>
public sealed class FakeNoise(CannedForecasts? canned) : NoiseService.NoiseServiceBase
{
    public override Task<ForecastNoiseResponse> ForecastNoise(ForecastNoiseRequest request, ServerCallContext context) => Task.FromResult(Canned.Answer(request));

    public override Task<FindQuietStretchesResponse> FindQuietStretches(FindQuietStretchesRequest request, ServerCallContext context) => Task.FromResult(Canned.Answer(request));

    private CannedForecasts Canned => canned ?? throw new RpcException(new Status(StatusCode.Unimplemented, ""));
}
