# docker build -t trimtally .
# docker run -d --name trimtally --env-file .env -v trimtally:/data --stop-timeout 20 --restart unless-stopped trimtally

FROM node:22-bookworm-slim AS build
WORKDIR /app
# For the database's driver, where no compiled one can be had.
RUN apt-get update \
  && apt-get install --yes --no-install-recommends g++ make python3 \
  && rm -rf /var/lib/apt/lists/*
COPY package.json package-lock.json .npmrc ./
RUN npm ci --no-audit
COPY tsconfig.json tsconfig.build.json ./
COPY shared shared
COPY commands commands
COPY src src
RUN npm run build && npm prune --omit=dev --no-audit

FROM node:22-bookworm-slim
# glibc, left to itself, keeps what a picture took: with this it hands back each piece of 128 kB or more.
ENV MALLOC_MMAP_THRESHOLD_=131072
ENV NODE_ENV=production \
  DATABASE_URL=file:/data/trimtally.db \
  BACKUP_DIR=/data/backups \
  HEALTH_PORT=8080
WORKDIR /app
COPY --from=build /app/node_modules node_modules
COPY --from=build /app/.build .build
COPY package.json ./
COPY migrations migrations
# A new volume takes the owner of what it covers.
RUN install --directory --owner=node --group=node --mode=0700 /data
USER node
VOLUME /data
STOPSIGNAL SIGTERM
HEALTHCHECK --interval=30s --timeout=5s --start-period=60s --retries=3 \
  CMD ["node", "-e", "fetch(`http://127.0.0.1:${process.env.HEALTH_PORT}/healthz`).then(({ ok }) => process.exit(ok ? 0 : 1), () => process.exit(1))"]
# The engine's usual heap would grow to twice the memory before it is swept, at no gain that can be measured.
CMD ["node", "--max-semi-space-size=1", "--heap-growing-percent=25", "--expose-gc", ".build/src/main.js"]
