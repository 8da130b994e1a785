/** The bundler takes style sheets imported for their effect. */
declare module '*.css';
